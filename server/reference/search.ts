/** What can be looked for. */
interface Findable {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
  readonly words: readonly string[];
}

/** Words that say nothing about what is looked for. */
const EMPTY = new Set(
  'a an and are at be by can do does for from has have how i if in is it its much my of on or should that the this to what when where which will with'.split(
    ' ',
  ),
);

/** Lower case, accents and apostrophes off, a plural without its s. */
function stem(word: string): string {
  return word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}

function wordsOf(text: string): string[] {
  const plain = text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[\u0300-\u036f’']/g, '');
  return (plain.match(/[\p{L}\p{N}.]+/gu) ?? []).map((word) =>
    stem(word.replace(/^0?\.(?=\d)|\.$/g, (dot) => (dot === '.' ? '' : '.'))),
  );
}

/** How well one word of the question is met by a text: whole word, beginning of one, or not. */
function meets(asked: string, words: readonly string[]): number {
  if (words.includes(asked)) return 1;
  if (asked.length >= 3 && words.some((word) => word.startsWith(asked))) return 0.6;
  // "clearances" asks for "clearance", "degreeing" for "degree".
  return words.some((word) => word.length >= 4 && asked.startsWith(word)) ? 0.5 : 0;
}

function scoreOf(asked: readonly string[], item: Findable): number {
  const title = wordsOf(`${item.title} ${item.name.replaceAll('-', ' ')}`);
  const phrases = item.words.map(wordsOf);
  const summary = wordsOf(item.summary);
  const single = asked.map((word) =>
    Math.max(3 * meets(word, title), 2.5 * meets(word, phrases.flat()), 1.5 * meets(word, summary)),
  );
  const met = single.filter((score) => score > 0).length;
  if (met === 0) return 0;
  const sum = single.reduce((total, score) => total + score, 0);
  const whole = [title, ...phrases].some(
    (phrase) => phrase.length > 0 && phrase.every((word) => asked.some((each) => meets(each, [word]) > 0)),
  );
  // Every word met counts for more than one word met well.
  return sum * (met / asked.length) + (whole ? 2 : 0);
}

/** What a question in a builder's words finds, best first; an empty question finds everything as it stands. */
export function find<Item extends Findable>(question: string, items: readonly Item[]): readonly Item[] {
  const all = wordsOf(question.slice(0, 200));
  const telling = all.filter((word) => !EMPTY.has(word));
  const asked = telling.length > 0 ? telling : all;
  if (asked.length === 0) return items;
  return items
    .map((item) => ({ item, score: scoreOf(asked, item) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .map(({ item }) => item);
}
