/**
 * Text for files that are read by machines line by line: what a person typed
 * must not open a line of its own where one is not meant, nor hide in one.
 */

// Controls, and marks that turn the direction of what follows (Unicode UAX 9); neither is visible in plain text.
const UNSEEN = /[^\P{Cc}\t\n\r]|[\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** One line: unseen characters out, every run of white space one space. */
export const plainLine = (text: string): string => text.replace(UNSEEN, '').replace(/\s+/g, ' ').trim();

/** Paragraphs: unseen characters out, `\n` for every line end, at most one empty line in a row. */
export const plainParagraphs = (text: string): string =>
  text
    .replace(UNSEEN, '')
    .replace(/\r\n?|\u2028|\u2029/g, '\n')
    .replace(/[^\S\n]+/g, ' ')
    .replace(/ ?\n ?/g, '\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
