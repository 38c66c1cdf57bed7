/**
 * Problems of spelling and grammar: what the parser itself reports (DW1xx).
 */
import { catalogued, type Page } from '../catalogued.js';
import { syntaxCodes } from '../codes/syntax.js';

const pages = {
  tooLarge: {
    title: 'The file is larger than the limit',
    explanation:
      'A schedule of several hundred tasks fits well inside the limit, which is there so that a text from outside cannot keep a program busy. Split the file with `use`, or have the program that reads it raise the limit.',
    wrong: '# one file with every machine of a dealer in it',
    right: 'schedule orchard-tractor "Orchard tractor"\n  use "common/diesel"',
  },
  tooDeep: {
    title: 'Parentheses or `not` are nested deeper than the limit',
    explanation:
      'Nobody can read a condition that is dozens of levels deep, so the depth is bounded before the text is read. Remove parentheses that change nothing, or declare part of the condition as a duty or a defect of its own.',
    wrong: 'stop s "Stop" when ((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((( panel off )))))',
    right: 'stop s "Stop" when panel off',
  },
  oddCharacter: {
    title: 'A character that has no meaning in a schedule',
    explanation:
      'Outside texts and comments a schedule is written with letters, digits, hyphens, commas, parentheses and straight double quotes. Anything else is most often a slip of the keyboard or was brought in by copying from a word processor.',
    wrong: 'task grease “Grease the pivots”; every 50 h of engine',
    right: 'task grease "Grease the pivots" every 50 h of engine',
  },
  hiddenCharacter: {
    title: 'A character that cannot be seen, or that reorders the text on screen',
    explanation:
      'Control characters, invisible characters and those that turn the direction of writing can make a line look different from what it says. They are refused everywhere, in texts and comments too.',
    wrong: 'duty dusty "Dusty\u202Eground"',
    right: 'duty dusty "Dusty ground"',
  },
  textNotClosed: {
    title: 'A text without its closing quote',
    explanation:
      'A text stands between two straight double quotes on one line. Close it before the line ends; a longer procedure is several `do` lines.',
    wrong: 'event refit "A wheel was refitted',
    right: 'event refit "A wheel was refitted"',
  },
  unknownEscape: {
    title: 'A backslash that stands before neither a quote nor a backslash',
    explanation: 'In a text, \\" stands for a quote and \\\\ for a backslash. There are no other escapes; write the character itself.',
    wrong: 'do "Set the valve\\lever to N"',
    right: 'do "Set the valve lever to N"',
  },
  numberForm: {
    title: 'A number, date or time in a form that can be misread',
    explanation:
      'Numbers have a decimal point and no thousands separator, whole numbers have no point, dates are ISO 8601 (2026-03-02) and times have four digits (07:30), so that no country reads them otherwise.',
    wrong: 'uses 6,6 L engine-oil',
    right: 'uses 6.6 L engine-oil',
  },
  nameForm: {
    title: 'A name or word in the wrong form',
    explanation:
      'Names are small letters and digits in words joined by hyphens; the words of the language are written in small letters; months begin with a capital. What people read stands in the quoted title.',
    wrong: 'meter Engine_Hours "Hour meter" counts h',
    right: 'meter engine-hours "Hour meter" counts h',
  },
  headerMissing: {
    title: 'The file does not begin with a header',
    explanation: 'A file begins with `schedule`, `variant` or `part`, its name and its title, so that everybody knows what it is.',
    wrong: 'meter engine "Hour meter" counts h',
    right: 'schedule pump "Irrigation pump"\n  language 1\nmeter engine "Hour meter" counts h',
  },
  reservedName: {
    title: 'A word of the language used as a name',
    explanation:
      'The words that open declarations and clauses, and a few that join them, cannot be names, or nobody could tell where a clause ends. Add a word to it.',
    wrong: 'event change "The implement was changed"',
    right: 'event implement-change "The implement was changed"',
  },
  misspelt: {
    title: 'A word of the language is misspelt',
    explanation:
      'The word is close to one that fits here. It is read as that word, so that the rest of the text is checked too; correct the spelling.',
    wrong: 'task grease "Grease the pivots" evry 50 h of engine',
    right: 'task grease "Grease the pivots" every 50 h of engine',
  },
  strayWords: {
    title: 'Something that belongs to no clause',
    explanation:
      'Each clause and each declaration begins with its own word. What stands here begins none and does not continue the clause before it; it was passed over up to the next word that begins one.',
    wrong: 'task grease "Grease the pivots" every 50 h of engine roughly',
    right: 'task grease "Grease the pivots" every 50 h of engine',
  },
  unexpected: {
    title: 'Something else was expected here',
    explanation:
      'The clause began well but goes on in a way that the language does not have. The message says what was expected; reading goes on at the next clause.',
    wrong: 'task grease "Grease the pivots" every fifty h of engine',
    right: 'task grease "Grease the pivots" every 50 h of engine',
  },
  titleMissing: {
    title: 'A title is missing, or a text stands without quotes',
    explanation:
      'What is declared has a short name for other clauses to use and a title for people to read. Titles and all other texts stand in straight double quotes.',
    wrong: 'duty dusty',
    right: 'duty dusty "Dry, dusty ground"',
  },
  whicheverMissing: {
    title: 'Two limits joined by `or` do not say which of them decides',
    explanation:
      '`whichever first` makes the task due when any of them is reached, `whichever last` when all are. Without the words, `first` is assumed.',
    wrong: 'every 100 h of engine or 12 months',
    right: 'every 100 h of engine or 12 months, whichever first',
  },
  tooMany: {
    title: 'Too many mistakes to go on',
    explanation: 'After this many mistakes the rest would say little. Correct the first ones and try again.',
    wrong: '# a file that is not a schedule at all',
    right: 'schedule pump "Irrigation pump"',
  },
} satisfies Readonly<Record<keyof typeof syntaxCodes, Page>>;

/** Every problem that `parse` can report. */
export const syntaxCatalogue = catalogued(syntaxCodes, pages);
