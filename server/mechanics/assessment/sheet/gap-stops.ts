import { SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { gapSaid } from '../common/gap-said.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import { wayOutOf } from '../common/way-out.ts';
import type { Evidence } from '../evidence.ts';
import type { JudgedGap } from './gap.ts';

interface ShortGap {
  readonly question: AssessedQuestion;
  readonly stop: StopReason;
}

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'Looked: it is short',
    changes: 'The stop stands until the desk lifts it, with the reason.',
  },
  {
    code: 'not-found',
    label: 'It was read or written wrong',
    changes: 'The desk strikes the reading out, with the reason: the stop goes with it.',
  },
];

/**
 * A gap that was read short stops everything: until what was found is answered and a person lifts it, or its reading is
 * struck out with a reason. Each reading that is short has its own stop: a later one that is short as well stands again.
 */
export function shortGap({ entry, gap, limit, word }: JudgedGap, { answers }: Evidence): ShortGap[] {
  if (word !== 'short') return [];
  const about = valveSubject(entry);
  const said = `${SHEET_KINDS[entry.kind].toLowerCase()} on ${placeOf(entry)}`;
  const size = `${gapSaid(gap)} against ${inches(limit.value)}`;
  const question = asked(
    {
      code: 'gap-short',
      weight: 'weak',
      ask: `Is the ${said} short, or was it read or written wrong?`,
      size: `It was read ${size} (${limit.source}).`,
      test: 'With nothing turned: say which parts are in it and how it was read. A qualified shop looks for where the parts met.',
      restsOn: [entry.id],
    },
    { about, step: 'sheet', among: entry.id, answers, choices: CHOICES },
  );
  const answered = question.answered !== undefined;
  return [
    {
      question,
      stop: {
        id: `stop:gap-short:${entry.kind}:${entry.id}`,
        code: 'gap-short',
        about,
        sentence: `Do not turn it: ${said} is short, ${size}.`,
        ...wayOutOf('have a qualified shop look where the parts meet', answered),
        from: 'readings',
        entryId: entry.id,
        line: entry.line,
        answered,
        restsOn: [entry.id],
      },
    },
  ];
}
