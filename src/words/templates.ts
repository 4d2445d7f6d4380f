// What the templates of a new note are called, by language. The list of templates itself holds the English.
import { templateTitles } from './de/templates.ts';
import type { Language } from './languages.ts';

export interface TemplateWords { readonly title: string; readonly about: string }

/** Title and question of a template in a language. */
export function templateWords(language: Language, template: TemplateWords & { readonly name: string }): TemplateWords {
  return (language === 'de' ? templateTitles[template.name] : undefined) ?? template;
}
