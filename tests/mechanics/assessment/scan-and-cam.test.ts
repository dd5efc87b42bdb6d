import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type {
  Evidence,
  ScanEvidence,
  SheetEvidence,
  Side,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { type Kept, workingsOf } from '../../tools/record/kept-workings.ts';
import { scanOf } from './piston-scan.ts';
import { PLAIN } from './plain-build.ts';

/*
 * Advance costs the intake its gap to the piston, retard the exhaust: a cam maker’s pages (trade practice 2.8). By hand:
 * equal drop at 62 and 148 peaks at 105, 3° early of 108; at 66 and 150 at 108, straight up.
 */
const drop = (before: number, after: number): Kept => [
  'centreline',
  { before: `${before} deg`, after: `${after} deg`, card: '108 deg', side: 'intake' },
];
const EARLY = drop(62, 148);
const AS_CARD = drop(66, 150);

/** .085 in at its least, 9° after TDC, on a street intake whose limit is .080 (usual figure of the trade press). */
const scan = (id: string, least = 0.085, valve: Side = 'intake') => scanOf(id, least, { valve });
/** Read once the answer to what was asked of the first one was kept. */
const again = (id: string, least: number): ScanEvidence => ({ ...scan(id, least), line: 600 });

interface Told {
  readonly found: boolean;
  /** Which of the questions that are asked; the first is of the first scan. */
  readonly of?: string;
}

const build = (
  scans: readonly ScanEvidence[],
  kept: readonly Kept[],
  answers: Evidence['answers'] = [],
): Evidence => ({ ...PLAIN, scans, workings: workingsOf(kept), answers });

const asks = (evidence: Evidence) => assess(evidence).questions.filter(({ code }) => code === 'cam-then');

/** The same, with what is asked of the cam at that scan answered. */
function answered(evidence: Evidence, { found, of = 'one' }: Told): Evidence {
  const question = asks(evidence).find(({ restsOn }) => restsOn.includes(of));
  if (question === undefined) throw new Error(`nothing is asked of the scan ${of}`);
  const answer = {
    id: `answer-${evidence.answers.length}`,
    line: 500 + 200 * evidence.answers.length,
    code: question.code,
    question: question.ask,
    questionId: question.id,
    answer: found ? 'found' : 'not-found',
    found,
  };
  return { ...evidence, answers: [...evidence.answers, answer] };
}

const gap = (evidence: Evidence, valve: Side = 'intake') =>
  assess(evidence).judgements.find(({ id }) => id === `gap:piston-to-valve:1-${valve}`);
const told = (evidence: Evidence) =>
  assess(evidence)
    .headlines.filter(({ step }) => step === 'scan')
    .map(({ sentence }) => sentence)
    .join('\n');

describe('a cam found off its card beside a scan', () => {
  const one = build([scan('one')], [EARLY]);

  test('asks which came first, and until then the scan has no word', () => {
    expect(gap(build([scan('one')], []))?.word).toBe('clear');
    expect(asks(one)).toHaveLength(1);
    expect(asks(one)[0]?.size).toContain('3° advanced against the card');
    expect(gap(one)?.word).toBeUndefined();
    expect(gap(one)?.sentence).toMatch(/where it is now, or was the cam moved after that/);
  });

  test('off by no more than the wheel is good to is not off: 67 and 148 peak at 107.5, against 108', () => {
    const within = build([scan('one')], [drop(67, 148)]);
    expect(asks(within)).toEqual([]);
    expect(gap(within)?.word).toBe('clear');
    const [peak] = assess(within).headlines.filter(({ step }) => step === 'timing');
    expect(peak?.sentence).toMatch(
      /^By the wheel the intake peaks 107\.5° after TDC\. But top dead centre is not proved/,
    );
    expect(peak?.sentence).not.toMatch(/costs/);
  });

  test('on a call about timing what was scanned is asked before the call is said to be whole', () => {
    const stop: Kept = ['top-dead-centre', { stopReadings: ['36 deg', '36 deg'] }];
    const timing = build([scan('one')], [stop, EARLY]);
    const next = (evidence: Evidence) =>
      assess({ ...evidence, call: { ...evidence.call, goal: 'cam-timing' } }).next?.action;
    expect(next(timing)).toBe('cam-then');
    expect(next(answered(timing, { found: false }))).not.toBe('cam-then');
  });

  test('read where it was found: the two belong together, and the word stands', () => {
    const together = answered(one, { found: false });
    expect(gap(together)?.word).toBe('clear');
    expect(told(together)).toMatch(/cam as it was found, 3° advanced.*: scan and timing belong together/);
  });

  test('moved after it: the gap no longer holds, and the valve is scanned again', () => {
    const moved = answered(one, { found: true });
    expect(gap(moved)?.word).toBeUndefined();
    expect(gap(moved)?.sentence).toMatch(/a scan with the cam where it is now.*no longer holds/);
    expect(told(moved)).not.toContain('belong together');
  });

  test('on a call about timing every valve that no longer has a gap is read again next, and no other', () => {
    const stop: Kept = ['top-dead-centre', { stopReadings: ['36 deg', '36 deg'] }];
    const both = build([scan('one'), scan('x', 0.13, 'exhaust')], [stop, EARLY]);
    const gone = answered(both, { found: true });
    const next = (evidence: Evidence) =>
      assess({ ...evidence, call: { ...evidence.call, goal: 'cam-timing' } }).next;
    expect(next(gone)).toMatchObject({
      action: 'gap-again',
      sentence: expect.stringContaining('1 intake and 1 exhaust again'),
    });
    const since = { ...gone, scans: [...(gone.scans ?? []), again('two', 0.125)] };
    const rest = next(since);
    expect(rest?.sentence).toContain('Read piston to valve of 1 exhaust again');
  });

  test('scanned again, the new one counts alone, and nobody is asked why the two differ', () => {
    const moved = answered(one, { found: true });
    const both = { ...moved, scans: [scan('one'), again('two', 0.125)] };
    expect([gap(both)?.word, gap(both)?.restsOn]).toEqual(['clear', ['two']]);
    expect(gap(both)?.sentence).not.toContain('struck out');
    expect(assess(both).questions.map(({ code }) => code)).not.toContain('scans-apart');
  });

  test('what was short before the cam was moved stays short until a person strikes it out', () => {
    const short = answered(build([scan('one', 0.06)], [EARLY]), { found: true });
    const both = { ...short, scans: [scan('one', 0.06), again('two', 0.125)] };
    expect([gap(both)?.word, gap(both)?.restsOn]).toEqual(['short', ['one']]);
  });

  test('an exhaust by the intake’s reading: one cam turns both lobes', () => {
    expect(gap(build([scan('one', 0.13, 'exhaust')], [EARLY]), 'exhaust')?.word).toBeUndefined();
  });
});

describe('which gaps were there when it was said', () => {
  const one = build([scan('one')], [EARLY]);
  const moved = answered(one, { found: true });

  test('a typing mistake of one that was put right since makes it no newer one', () => {
    const righted = { ...moved, scans: [{ ...scan('one'), id: 'right', line: 600, entered: 100 }] };
    expect(gap(righted)?.word).toBeUndefined();
    expect(gap(righted)?.sentence).toContain('no longer holds');
  });

  test('said to be moved after it had been said otherwise, it is of all that was read till then', () => {
    const [asked] = asks(one);
    const said = (found: boolean, line: number): Evidence['answers'][number] => ({
      ...{ id: `said-${line}`, line, code: 'cam-then', questionId: asked?.id ?? '' },
      ...{ question: asked?.ask ?? '', answer: found ? 'found' : 'not-found', found },
    });
    const scanned = { ...one, scans: [{ ...scan('one'), line: 400 }] };
    const word = (...answers: Evidence['answers'][number][]) => gap({ ...scanned, answers })?.word;
    expect(word(said(false, 300), said(true, 500))).toBeUndefined();
    // Said twice in one sense it is of what was there when it was said first.
    expect(word(said(true, 300), said(true, 500))).toBe('clear');
  });
});

describe('which reading of the cam it is asked of', () => {
  test('straight up, and read in one place alone, nothing is asked', () => {
    expect(asks(build([scan('one')], [AS_CARD]))).toEqual([]);
    expect(gap(build([scan('one')], [AS_CARD]))?.word).toBe('clear');
  });

  test('read there again, the answer holds', () => {
    const together = answered(build([scan('one')], [EARLY]), { found: false });
    expect(gap({ ...together, workings: workingsOf([EARLY, drop(62.5, 148.5)]) })?.word).toBe('clear');
  });

  test('moved to straight up since: what belonged to the old place is asked again', () => {
    const together = answered(build([scan('one')], [EARLY]), { found: false });
    const since = { ...together, workings: workingsOf([EARLY, AS_CARD]) };
    expect(asks(since)).toHaveLength(1);
    expect(asks(since)[0]?.answered).toBeUndefined();
    expect(gap(since)?.word).toBeUndefined();
  });
});

describe('a gap typed by itself is held to the same', () => {
  const typed = (value: number, id = 'typed'): SheetEvidence => ({
    id,
    line: 90,
    standing: true,
    cylinder: 1,
    valve: 'intake',
    kind: 'piston-to-valve',
    reading: { value: value * IN },
    readAs: 'a gap',
    tool: 'indicator',
    spring: 'light',
    lifter: 'solid',
    arms: 'these',
  });
  const plain = (value: number, kept: readonly Kept[]): Evidence => ({
    ...build([], kept),
    sheet: [...PLAIN.sheet, typed(value)],
  });

  test('a cam where its card has it asks nothing, and the word stands', () => {
    expect(asks(plain(0.13, [AS_CARD]))).toEqual([]);
    expect(gap(plain(0.13, [AS_CARD]))?.word).toBe('clear');
  });

  test('a cam found off asks which came first, and until then there is no word', () => {
    const one = plain(0.13, [EARLY]);
    expect(asks(one).map(({ step, restsOn }) => [step, restsOn])).toEqual([['sheet', ['typed']]]);
    expect(gap(one)?.word).toBeUndefined();
    expect(gap(one)?.sentence).toMatch(/Was piston to valve read with the cam where it is now/);
  });

  test('read where it was found the gap counts; moved since it no longer holds', () => {
    expect(gap(answered(plain(0.13, [EARLY]), { found: false, of: 'typed' }))?.word).toBe('clear');
    const moved = answered(plain(0.13, [EARLY]), { found: true, of: 'typed' });
    expect(gap(moved)?.word).toBeUndefined();
    expect(gap(moved)?.sentence).toContain('a reading with the cam where it is now');
  });

  test('read again after it was moved, the new one counts alone; a short one stays', () => {
    const twice = (first: number) => {
      const moved = answered(plain(first, [EARLY]), { found: true, of: 'typed' });
      return gap({ ...moved, sheet: [...moved.sheet, { ...typed(0.125, 'two'), line: 600 }] });
    };
    expect([twice(0.1)?.word, twice(0.1)?.restsOn]).toEqual(['clear', ['two']]);
    expect([twice(0.06)?.word, twice(0.06)?.restsOn]).toEqual(['short', ['typed']]);
  });
});

describe('one question for the build', () => {
  const many = build(
    [scan('one'), scan('two', 0.13, 'exhaust'), { ...scan('three', 0.12), cylinder: 2 }],
    [EARLY],
  );

  test('asked once of all gaps that were read, and its answer is of each of them', () => {
    expect(asks(many).map(({ about, restsOn }) => [about.of, restsOn])).toEqual([
      ['build', ['one', 'three', 'two']],
    ]);
    expect(asks(many)[0]?.size).toContain('1 intake, 1 exhaust and 2 intake');
    const together = answered(many, { found: false });
    expect([gap(together)?.word, gap(together, 'exhaust')?.word]).toEqual(['clear', 'clear']);
    const moved = answered(many, { found: true });
    expect([gap(moved)?.word, gap(moved, 'exhaust')?.word]).toEqual([undefined, undefined]);
    expect(asks(moved).filter((each) => each.answered === undefined)).toEqual([]);
  });

  test('what is read after it is not asked about again, and an answer put right is of all of them', () => {
    const moved = answered(many, { found: true });
    const since: Evidence = { ...moved, scans: [...(many.scans ?? []), again('four', 0.125)] };
    expect(asks(since).map((each) => [each.restsOn.length, each.answered?.found])).toEqual([[3, true]]);
    const right: Evidence = {
      ...since,
      answers: since.answers.flatMap((each) => [
        each,
        { ...each, id: 'put-right', line: 700, answer: 'not-found', found: false },
      ]),
    };
    expect(asks(right).map((each) => [each.restsOn.length, each.answered?.found])).toEqual([[4, false]]);
  });
});
