// What a quantity of the closed list is called in a language.
import { quantityNouns } from './de/quantities.ts';
import type { Language } from './languages.ts';

/** `dissolved oxygen`, `Sauerstoffgehalt`. `name` is the English name of the list; a name that is not in it stays. */
export function quantityName(name: string, language: Language): string {
  return language === 'de' ? quantityNouns[name]?.name ?? name : name;
}
