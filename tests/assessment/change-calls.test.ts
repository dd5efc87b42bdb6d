import { describe, expect, test } from 'vitest';
import { assess } from '../../server/mechanics/assessment/assess.ts';
import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type { ChangeDetail, ChangeGap } from '../../server/mechanics/assessment/change/detail.ts';
import { bareInches } from '../../server/mechanics/assessment/common/said.ts';
import { IN, LBF } from '../../server/mechanics/kit/si.ts';
import { memberOf } from '../../shared/member.ts';
import { permuted } from '../mechanics/assessment/laws/permuted.ts';
import { facesOf, linesOf } from '../tools/call-faces.ts';
import { callOf, recordOf } from '../tools/record-of-evidence.ts';
import type { ChangeCall } from './change/change-call.ts';
import { CALLS } from './change-calls.ts';

/** The orders in which a call's entries are made. */
const ORDERS = [1, 2, 3] as const;

const changeOf = ({ details }: Assessment, key: string): ChangeDetail => {
  const found = details.change.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no change of ${key}: ${details.change.map((each) => each.key)}`);
  return found;
};

const saidBy = ({ headlines, notToRun, stop, details, judgements }: Assessment): string[] => [
  ...[...headlines, ...notToRun, ...stop, ...judgements].map(({ sentence }) => sentence),
  ...details.change.flatMap(({ adjusters, cautions, checks }) => [
    adjusters,
    ...cautions,
    ...checks.map(({ sentence }) => sentence),
  ]),
];

/** The word by the figures that stand beside it, read as anybody would. */
function wordByFigures({ after, limit }: ChangeGap): string | undefined {
  const [low, high, least] = [after?.low, after?.high, limit.value].map((si) =>
    si === undefined ? undefined : Number(bareInches(si).replace('−', '-')),
  );
  if (least === undefined) return undefined;
  if (low !== undefined && low >= least) return 'clear';
  return high !== undefined && (high < least || (after?.value === undefined && high === least))
    ? 'short'
    : 'close';
}

function expectGaps(assessment: Assessment, { gaps = [] }: ChangeCall): void {
  for (const { key, gap: name, word, sentence, ...bounds } of gaps) {
    const gap = changeOf(assessment, key).gaps.find((each) => each.name === name);
    if (word !== undefined) expect(gap?.word, name).toBe(word);
    for (const [bound, value] of Object.entries(bounds))
      expect(Number(memberOf(gap?.after, bound)) / IN, `${name} ${bound}`).toBeCloseTo(value, 9);
    if (sentence !== undefined)
      expect(assessment.judgements.find(({ id }) => id === gap?.judgementId)?.sentence).toBe(sentence);
  }
}

function expectFigures(assessment: Assessment, { figures = [] }: ChangeCall): void {
  for (const [key, name, value] of figures) {
    const figure = changeOf(assessment, key).figures.find((each) => each.name === name);
    if (value === undefined) expect(figure?.after, name).toBeUndefined();
    else {
      const unit = figure?.dimension === 'load' ? LBF : IN;
      expect((figure?.after?.value ?? Number.NaN) / unit, name).toBeCloseTo(value, 4);
    }
  }
}

/** Read with the lash in: .544 is net, and .528 would have it taken off twice; with 1.900 and 1.150, .206 and not .222. */
describe.each(CALLS.filter(({ said }) => /[Ff]orty-four|^The same/.test(said)))('“$said”', ({ evidence }) => {
  test('no face takes the lash off a lift that carries it, or may', () => {
    const record = recordOf(evidence);
    const faces = facesOf(record, callOf(evidence).id).map(({ name, html }) => ({
      name,
      text: linesOf(html).join(' '),
    }));
    expect(faces.length).toBeGreaterThan(20);
    for (const { name, text } of faces) expect(text, name).not.toMatch(/\.222\b|\.528\b/);
    // How much is in it is known in one of them: only that one is calculated with.
    const isKnown = evidence.setUps.every(({ lashSetting }) => lashSetting !== undefined);
    for (const side of isKnown ? ['desk', 'bench'] : []) {
      const own = faces.find(({ name }) => name === `${side}/consequences`)?.text;
      expect(own).toMatch(/Room to coil bind [^L]*\.206/);
      expect(own).toMatch(/Net valve lift [^L]*\.544/);
    }
  });
});

describe.each(CALLS)('“$said”', (call) => {
  test.each(ORDERS)('in order %i', (order) => {
    const assessment = assess(permuted(call.evidence, order));
    expectGaps(assessment, call);
    expectFigures(assessment, call);
    const said = saidBy(assessment);
    for (const sentence of call.says ?? []) expect(said).toContain(sentence);
    for (const pattern of call.silent ?? []) expect(said.filter((text) => pattern.test(text))).toEqual([]);
    for (const { gaps, key } of assessment.details.change)
      for (const gap of gaps)
        if (gap.word !== undefined) expect(gap.word, `${key} ${gap.name}`).toBe(wordByFigures(gap));
  });

  test('nothing is said twice', () => {
    const { headlines, notToRun, details } = assess(call.evidence);
    const once = [...headlines, ...notToRun].map(({ sentence }) => sentence);
    expect(new Set(once).size).toBe(once.length);
    for (const { adjusters } of details.change)
      expect(adjusters).not.toMatch(/(\d\.\d\d) pitches of its thread instead of \1\b/);
  });
});
