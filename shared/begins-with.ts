/** Whether what was said begins with the word, with its hyphens or without, and nothing goes on from it. */
export function beginsWith(said: string, word: string): boolean {
  const words = said.toLowerCase().trim().replaceAll('-', ' ');
  const own = word.replaceAll('-', ' ');
  return words.startsWith(own) && !/^[a-z0-9]/.test(words.slice(own.length));
}

/**
 * Whether something was found, as an answer has it that is that word alone or goes on after a stop: “found: pass 2”.
 * “Found nothing wrong” is neither of the two, and is left to a person.
 */
export function foundSaid(said: string): boolean | undefined {
  const word = /^(not[ -])?found\s*(?:$|[:;,.(–—])/.exec(said.toLowerCase().trim());
  return word === null ? undefined : word[1] === undefined;
}

/** Whether an answer is the one that was offered under this code. */
export const isAnswer = (said: string, code: string): boolean =>
  code === 'found' || code === 'not-found' ? foundSaid(said) === (code === 'found') : beginsWith(said, code);
