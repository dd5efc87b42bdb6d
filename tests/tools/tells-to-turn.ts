/*
 * Words that send somebody to turn, run or set the engine, or to take a reading that needs it turned. Under a stop no
 * page and no sentence may have them, but where it forbids, says what waits, or tells how something was.
 */

/** Where something to do begins: a sentence, a clause, or what follows “then” and “and”. */
const BEGINS = '(?:^|[.:;,?“] ?|\\bthen |\\band )';
const begins = (words: string): RegExp => new RegExp(`${BEGINS}(?:${words})`, 'i');

/** In one place: what nobody is told under a stop. */
const TELLS: readonly RegExp[] = [
  /\bturn (it|to|up to|over|by|twice|gently|in running|until|the (engine|crank|nut|screw|adjuster))\b/i,
  /\b(one|two|three|both|\d) (whole )?turns? by hand\b/i,
  /\bturn(ed|ing)? (it )?(over )?(gently )?by hand\b/i,
  /\bby hand (at the crank|only|in running)/i,
  /\b(run|start|fire|crank|rotate) (it|the engine)\b/i,
  begins('ink (it|the|a|at|all|again)\\b'),
  begins(
    '(re-?)?read (it(?! out| word)|them|the (valve|lobe|wheel|lift|lash|gap|small hand|ratio(?! off)|zero)|lobe|valve|every valve|again|on (the|a) light)\\b',
  ),
  /\bread (it |them )?(again|once more)\b/i,
  /\b(take|wants?) (one more|another|three) pass/i,
  /\btake the lash up\b/i,
  begins('set (it|one|them|every|the (lash|height|plunger|dial))\\b'),
  /\bfind zero lash\b|\bzero lash by up-and-down\b/i,
  /\b(fit a|move this|move the) (light|rocker|arm)/i,
  /\bswap(ped)? (the|these|them|arms|it|where)\b|\bthe swap test\b/i,
  /\bpush the (plunger|shut valve)\b/i,
  /\bmeasure (the gap|its travel|that (lobe|gap)|the mark|piston|again)\b/i,
  /\b(start|begin) (a|this|the) set-up\b|\bkeep (a|the) pass\b/i,
  /\bpositive stop in\b|\bfeeler between\b/i,
];

/** What waits, to its end: nothing behind these words is told to anybody now. */
const WAITS = /\bnot while the stop stands; after it:.*$/i;
/** Words that somebody else might write. */
const EXAMPLE = /\bsuch as “[^”]*”/gi;
/** It forbids it, says who has to lift the stop first, tells how something was, or is about a part in the hand. */
const OTHERWISE =
  /\b(do not|don’t|nobody|nothing is turned|no (reading|pass|set-up|test) is|until|with nothing turned|before (anything|the nut|it) is|the desk first lifts|fresh ink, turned over|a quarter turn)\b/i;

/** The sentences of a line that tell somebody to turn, run, set or read it. */
export const tellsToTurn = (line: string): string[] =>
  line
    .replace(WAITS, ' ')
    .replace(EXAMPLE, ' ')
    .split(/(?<=[.!?])\s+/)
    .filter((sentence) => TELLS.some((each) => each.test(sentence)) && !OTHERWISE.test(sentence));
