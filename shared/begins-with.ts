/** Whether what was said begins with the word, with its hyphens or without, and nothing goes on from it. */
export function beginsWith(said: string, word: string): boolean {
  const words = said.toLowerCase().trim().replaceAll('-', ' ');
  const own = word.replaceAll('-', ' ');
  return words.startsWith(own) && !/^[a-z0-9]/.test(words.slice(own.length));
}
