/** "an item", "a wing". */
export const withArticle = (word: string): string => `${/^[aeiou]/.test(word) ? "an" : "a"} ${word}`;

const listed = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;

export const orList = (words: readonly string[]): string => listed(words, "or");
export const andList = (words: readonly string[]): string => listed(words, "and");
