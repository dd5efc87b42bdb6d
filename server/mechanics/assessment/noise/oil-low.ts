import type { NextAction } from '../assessment.ts';
import { isSince } from '../common/since.ts';
import type { Evidence } from '../evidence.ts';
import { lastSaid } from './answers.ts';

/**
 * Oil that is low is put right before anything is read: what has no oil wears with every turn. Once advice was given it
 * was said, and the call goes on.
 *
 * Source: common practice, no published source.
 */
export function oilNext(evidence: Evidence): NextAction | undefined {
  const said = lastSaid('noise-oil', evidence);
  if (said?.answer !== 'low') return undefined;
  // Advice that was given before says nothing of it.
  if (evidence.notes.some((note) => note.kind === 'advice' && isSince(note, said.entry))) return undefined;
  return {
    id: 'next:noise:oil-low',
    action: 'oil-low',
    step: 'noise',
    about: { of: 'build' },
    sentence:
      'Have the oil filled to its mark and its pressure read on a gauge, and have somebody look whether oil comes up at the valves. Then answer once more how it stands.',
    sentenceAtBench:
      'Fill the oil to its mark, read its pressure on a gauge, and see whether oil comes up at the valves. Then say how it stands.',
    reason: 'The oil, or its pressure, is low: everything it reaches last wears first.',
    turns: false,
  };
}
