// Texts that a fix writes into a plan, in the note's language.
import type { Language } from './languages.ts';
import { quantityName } from './quantities.ts';

interface PlanTexts {
  /** What a stop rule does until the author says it better. */
  readonly endTheRun: string;
  /** The step that levels a measured quantity; the quantity by its name of the closed list. */
  readonly levelTanks: (quantity: string) => string;
}

const tables: Readonly<Record<Language, PlanTexts>> = {
  en: { endTheRun: 'End the run and bring the tank back to its usual state', levelTanks: (quantity) => `Bring the tanks to one ${quantity}` },
  de: { endTheRun: 'Versuch beenden und das Becken in seinen üblichen Zustand zurückbringen', levelTanks: (quantity) => `Becken angleichen (${quantityName(quantity, 'de')})` },
};

export const planTexts = (language: Language): PlanTexts => tables[language];
