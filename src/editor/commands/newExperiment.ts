// The command *new experiment*: at most ten questions, each answered or skipped with the Enter key, then a whole note that is
// not saved yet. Escape leaves without a trace; the step before is one key back. The note is written in the display language
// unless its author picks another one beside the templates.
import * as vscode from 'vscode';
import { newNote } from '../../edits/newNote.ts';
import { answerNames, checkAnswer, type AnswerName, type NewNoteAnswers } from '../../edits/newNoteAnswers.ts';
import { templateByName, templates, type Template } from '../../edits/newNoteTemplates.ts';
import { libraryMeasures } from '../../edits/planLibrary.ts';
import { templateIn } from '../../edits/templateLanguage.ts';
import { formatDate, readDuration } from '../../time/text.ts';
import { loadZone, utc } from '../../time/zone.ts';
import { languageNames, languages, type Language } from '../../words/languages.ts';
import { newNoteWords } from '../../words/newNote.ts';
import { templateWords } from '../../words/templates.ts';
import { editSentence, interfaceLanguage } from '../language.ts';
import { openNewNote, slugOf } from './openNewNote.ts';

/** The answers so far, and the language in which the note is written. */
type Answers = { -readonly [Name in keyof NewNoteAnswers]: NewNoteAnswers[Name] } & { language: Language };

/** What a question asks, and what an empty answer takes. */
interface Question { readonly ask: string; readonly example: string }

export function registerNewExperiment(): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.newExperiment', async (): Promise<vscode.Uri | null> => {
    const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
    const today = formatDate(Date.now(), loadZone(timeZone) ?? utc);
    const answers: Answers = { language: interfaceLanguage };
    for (let step = 0; step < answerNames.length;) {
      const name = answerNames[step]!;
      const given = name === 'template' ? await pickTemplate(answers) : await askFor(name, answers, step, { today, timeZone });
      if (given === null) return null;
      if (given === back) { step = Math.max(0, step - 1); continue; }
      answers[name] = given;
      step += 1;
    }
    return openNewNote(slugOf(answers.question || nameOf(answers)), newNote(answers, { today, timeZone, language: answers.language }));
  });
}

const back = Symbol('back');
type Given = string | null | typeof back;

const templateOf = (answers: Answers): Template => templateByName(answers.template ?? '') ?? templates.at(-1)!;

/** What the file is called where no question was given. */
const nameOf = (answers: Answers): string => (answers.language === 'en' ? templateOf(answers).name : templateWords(answers.language, templateOf(answers)).title);

/** A template, or (without a name) the language of the note. */
interface FirstItem extends vscode.QuickPickItem { readonly name: string | null }

function firstItems(language: Language): FirstItem[] {
  return [
    ...templates.map((each) => {
      const { title, about } = templateWords(interfaceLanguage, each);
      return { name: each.name, label: title, detail: about };
    }),
    { name: null, label: '', kind: vscode.QuickPickItemKind.Separator },
    {
      name: null, label: vscode.l10n.t('Language of the note: {0}', languageNames[language]), iconPath: new vscode.ThemeIcon('globe'),
      detail: vscode.l10n.t('Select this line to change it to {0}', languageNames[languageAfter(language)]),
    },
  ];
}

const languageAfter = (language: Language): Language => languages[(languages.indexOf(language) + 1) % languages.length]!;

/** Step 1: the template, whose name is the answer. Beside them the language of the note stands, and turns when it is picked. */
function pickTemplate(answers: Answers): Promise<Given> {
  return new Promise((resolve) => {
    const pick = vscode.window.createQuickPick<FirstItem>();
    pick.title = vscode.l10n.t('New Experiment');
    pick.step = 1;
    pick.totalSteps = answerNames.length;
    pick.placeholder = vscode.l10n.t('What is it about? Every further question can be skipped with Enter.');
    pick.matchOnDetail = true;
    pick.items = firstItems(answers.language);
    pick.activeItems = [pick.items.find((each) => each.name === answers.template) ?? pick.items[0]!];
    pick.onDidAccept(() => {
      const [picked] = pick.activeItems;
      if (picked && picked.name === null) {
        answers.language = languageAfter(answers.language);
        pick.items = firstItems(answers.language);
        pick.activeItems = pick.items.slice(-1);
        return;
      }
      resolve(picked?.name ?? 'blank');
      pick.dispose();
    });
    pick.onDidHide(() => { resolve(null); pick.dispose(); });
    pick.show();
  });
}

function questionOf(name: AnswerName, answers: Answers, here: { today: string; timeZone: string }): Question {
  const words = newNoteWords(answers.language);
  const template = templateIn(words, templateOf(answers));
  switch (name) {
    case 'question': return { ask: vscode.l10n.t('What do you want to know?'), example: template.question };
    case 'treatment': return { ask: vscode.l10n.t('What do the treated tanks have that the others do not?'), example: template.treatment };
    case 'tanks': return { ask: vscode.l10n.t('Names of the tanks; treatment and reading order are then drawn'), example: [template.treated.id, template.control?.id].filter(Boolean).join(', ') };
    case 'measure': return { ask: vscode.l10n.t('What is measured? There are {0}', libraryMeasures.map((each) => each.id).join(', ')), example: template.measure.join(', ') };
    case 'place': return { ask: vscode.l10n.t('Where? Name, latitude, longitude, time zone: any of them'), example: here.timeZone };
    case 'start': return { ask: vscode.l10n.t('When does it start? Date and time'), example: `${here.today} ${template.start}` };
    case 'lightOff': return { ask: vscode.l10n.t('When do the lights go off?'), example: template.lightOff ?? words.noLights };
    case 'every': return { ask: vscode.l10n.t('How often do you read?'), example: template.every };
    default: return { ask: vscode.l10n.t('How long does it run?'), example: template.length };
  }
}

/** One question with an input box; empty takes the example. */
function askFor(name: AnswerName, answers: Answers, step: number, here: { today: string; timeZone: string }): Promise<Given> {
  const template = templateOf(answers);
  const { ask, example } = questionOf(name, answers, here);
  return new Promise((resolve) => {
    const box = vscode.window.createInputBox();
    box.title = vscode.l10n.t('New Experiment: {0}', templateWords(interfaceLanguage, template).title);
    box.step = step + 1;
    box.totalSteps = answerNames.length;
    box.prompt = vscode.l10n.t('{0} (Enter alone: {1})', ask, example);
    box.placeholder = example;
    box.value = answers[name] ?? '';
    box.buttons = [vscode.QuickInputButtons.Back];
    const wrong = (): string | undefined => {
      const length = readDuration(name === 'every' ? template.length : '');
      const message = checkAnswer(name, box.value, length);
      return message ? editSentence(message) : undefined;
    };
    box.onDidChangeValue(() => { box.validationMessage = wrong(); });
    box.onDidTriggerButton(() => { resolve(back); box.dispose(); });
    box.onDidAccept(() => {
      box.validationMessage = wrong();
      if (box.validationMessage !== undefined) return;
      resolve(box.value.trim());
      box.dispose();
    });
    box.onDidHide(() => { resolve(null); box.dispose(); });
    box.show();
  });
}
