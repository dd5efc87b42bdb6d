import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import {
  type Answerable,
  answersOf,
  SLIPS,
  WAS_SLIP,
} from '../../../server/mechanics/assessment/common/answers-of.ts';
import { CAUSES } from '../../../server/mechanics/explain-readings/types.ts';

/** Questions that may have the bare yes or no, each with why a yes to it says that the reading is a slip. */
const WHY: Readonly<Record<(typeof SLIPS)[number], string>> = {
  'caliper-on-lobe': 'yes: the caliper sat on the ramp, the lift is not the lobe’s',
  'decimal-slip': 'yes: the point is misplaced in that reading',
  'digits-swapped': 'yes: two digits of that reading are the wrong way round',
  'drifting-passes': 'yes: the base slipped, these passes have no mean',
  'falling-passes': 'yes: lifter or base gave way under these passes',
  'gross-lift-as-lobe': 'yes: the lobe lift is a valve lift',
  'hand-read-backwards': 'yes: the hand was read backwards',
  'lash-formula': 'yes: the lift was worked out wrongly',
  'lifts-exchanged': 'yes: lobe and valve lift stand in each other’s place',
  'out-of-travel': 'yes: the dial stopped, or left its place, before the valve did',
  'pass-apart': 'yes: that pass was read or written wrong',
  'pass-of-other-lift': 'yes: that pass is of the other lift',
  'passes-scatter': 'yes: the set-up was loose under these passes',
  'short-at-top': 'yes: the dial ran out of travel at the top',
  slip: 'yes: the reading was another figure',
  'turn-miscounted': 'yes: a turn is missing or too many',
  'turn-too-few': 'yes: a turn is missing',
  'turn-too-many': 'yes: a turn is too many',
  'unit-mixed': 'yes: the reading is in another unit',
  'unit-or-decimal': 'yes: the reading is in another unit, or its point misplaced',
  'unlisted-fault': 'yes: something shifted the reading',
  'valve-swapped': 'yes: the reading is of the other valve',
  'wrong-valve': 'yes: the reading is of the other valve',
  'zero-moved': 'yes: the zero moved under the readings',
  'zero-not-returned': 'yes: the zero moved under the passes',
};

const MECHANICS = 'server/mechanics';

interface Put {
  readonly at: string;
  readonly members: ReadonlyMap<string, string>;
}

const sources = readdirSync(MECHANICS, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => {
    const file = path.join(MECHANICS, name);
    return {
      file,
      source: ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true),
    };
  });

function nodes(node: ts.Node, seen: (each: ts.Node) => void): void {
  seen(node);
  node.forEachChild((child) => nodes(child, seen));
}

/** Every place where a doubt is put to somebody, with what it is put with. */
function everyPut(): Put[] {
  const found: Put[] = [];
  for (const { file, source } of sources) {
    if (!file.includes('/assessment/')) continue;
    nodes(source, (node) => {
      if (!ts.isCallExpression(node) || node.expression.getText() !== 'asked') return;
      const [, of] = node.arguments;
      if (of === undefined || !ts.isObjectLiteralExpression(of)) return;
      found.push({
        at: file,
        members: new Map(
          of.properties.flatMap((each): [string, string][] =>
            ts.isPropertyAssignment(each)
              ? [[each.name.getText(), each.initializer.getText()]]
              : ts.isShorthandPropertyAssignment(each)
                ? [[each.name.getText(), each.name.getText()]]
                : [],
          ),
        ),
      });
    });
  }
  return found;
}

/** Words of doubts that readings raise by themselves. */
function codesOfReadings(): string[] {
  const codes = new Set<string>(CAUSES);
  for (const { file, source } of sources) {
    if (!file.includes(`${MECHANICS}/questions/`)) continue;
    nodes(source, (node) => {
      if (
        ts.isPropertyAssignment(node) &&
        node.name.getText() === 'code' &&
        ts.isStringLiteral(node.initializer)
      )
        codes.add(node.initializer.text);
    });
  }
  return [...codes];
}

describe('answers to questions', () => {
  test('the bare yes or no stands only where a yes says that it was a slip, and each has its reason here', () => {
    expect([...SLIPS].toSorted()).toEqual(Object.keys(WHY).toSorted());
    for (const code of SLIPS) {
      expect(answersOf(code), code).toBe(WAS_SLIP);
      expect(WHY[code], code).toMatch(/^yes: /);
    }
  });

  test('every question says its answers where it is put', () => {
    const put = everyPut();
    expect(put.length).toBeGreaterThan(50);
    expect(put.filter(({ members }) => !members.has('choices')).map(({ at }) => at)).toEqual([]);
    // Nobody writes the pair down a second time, or hands it out past the list.
    const pair = sources.filter(
      ({ file, source }) =>
        !file.endsWith('/common/answers-of.ts') && /WAS_SLIP|Looked: it does not fit/.test(source.text),
    );
    expect(pair.map(({ file }) => file)).toEqual([]);
  });

  test('what readings raise is on the list, or has answers of its own', () => {
    const own = ['asked/choices.ts', 'compared/card-doubted.ts']
      .map((file) => readFileSync(`server/mechanics/assessment/ratio/${file}`, 'utf8'))
      .join('\n');
    const elsewhere = codesOfReadings().filter(
      (code) => !SLIPS.some((slip) => slip === code) && !own.includes(`'${code}'`),
    );
    const ours: readonly Answerable[] = [
      'card-not-this-lobe',
      'card-ratio',
      'copied-reading',
      'ratio-not-listed',
      'spring-mixed',
      'springs-at-different-lash',
      'valve-lift-as-lobe',
      'wrong-card-row',
    ];
    expect(elsewhere.filter((code) => !['out-of-range', 'not-a-number'].includes(code)).toSorted()).toEqual(
      ours,
    );
    for (const code of ours) expect(answersOf(code), code).not.toBe(WAS_SLIP);
  });

  /* What somebody presses Yes for has to leave standing what it says is right. */
  test.each<[Answerable, string]>([
    ['lobes-apart', 'not-found'],
    ['springs-at-different-lash', 'not-found'],
    ['scan-far-from-tdc', 'not-found'],
    ['scan-jumps', 'not-found'],
    ['scan-apart', 'not-found'],
    ['lash-left-in', 'found'],
    ['card-ratio', 'found'],
  ])('a yes to %s is the answer %s', (code, word) => {
    expect(
      answersOf(code)
        .filter(({ label }) => label.startsWith('Yes'))
        .map((each) => each.code),
    ).toEqual([word]);
  });
});
