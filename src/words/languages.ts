// The languages that the interface and the generated prose can speak, and how a tag such as `de-AT` finds its own.
export const languages = ['en', 'de'] as const;
export type Language = (typeof languages)[number];

/** What each language calls itself. */
export const languageNames: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch' };

/** The language of words for a BCP 47 tag, by its first part; English where we have no words of our own. */
export function languageOf(tag: string | null | undefined): Language {
  const first = (tag ?? '').trim().toLowerCase().split(/[-_]/)[0];
  return languages.find((each) => each === first) ?? 'en';
}
