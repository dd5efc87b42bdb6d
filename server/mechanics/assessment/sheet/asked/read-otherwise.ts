import { asEntered } from '../../../../../shared/quantities/as-entered.ts';
import type { AnswerChoice, AssessedQuestion } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import { listed, placeOf, valveSubject } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { CHANGED_OVER, changedOver, endsOf, type Otherwise } from '../rows/changed-over.ts';
import type { SheetRow } from '../rows/rows.ts';
import { wasRead } from '../sides/group-answered.ts';

/** Of one thing that was read in two places. */
const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'One was misread',
    changes: 'It is struck out with the reason; until then the valve is not set against the others.',
  },
  {
    code: 'not-found',
    label: 'Now the one comes up, now the other',
    changes: 'Both stay; base, lifter or lash moves between them, and is looked at first.',
  },
];

/** Two readings of one thing on the sheet that do not go together, with no third to say which is right. */
function onSheet({ lobe, lobes, lifts }: SheetRow): Otherwise[] {
  const lots = [
    ...(lobe === undefined
      ? []
      : [{ of: 'lobe lift' as const, among: 'lobe', readings: lobes, figure: lobe }]),
    ...lifts.map(({ spring, readings, figure }) => ({
      of: 'valve lift' as const,
      among: spring,
      readings,
      figure,
    })),
  ];
  return lots
    .filter(({ figure }) => figure.undecided === true)
    .map(({ of, among, readings }) => ({
      of,
      among,
      readAs: listed(readings.map(({ readAs }) => asEntered(readAs)).sort()),
      restsOn: readings.map(({ id }) => id),
      ...endsOf(readings),
    }));
}

/**
 * A valve that reads otherwise when it is read again. Nothing rests on either reading before a third, or a person, says
 * which is right: it is no odd valve, and no part is moved for it.
 */
export function readOtherwise(evidence: Evidence, rows: readonly SheetRow[]): AssessedQuestion[] {
  const all = rows.flatMap((row) => onSheet(row).map((own) => ({ row, own })));
  return all.map(({ row, own }) => {
    const { of, among, readAs, restsOn } = own;
    const other = changedOver(row, own, all);
    const was = other === undefined ? wasRead(evidence, row, among) : undefined;
    const holds = was !== undefined ? `Which of them was read ${was}` : 'Which of them was misread';
    const which =
      other === undefined
        ? `${holds}?`
        : `${holds}, or did its arm and that of ${other} change places between?`;
    return asked(
      {
        code: 'read-otherwise',
        weight: 'strong',
        ask: `The ${of} of ${placeOf(row)} was read ${readAs}. ${which}`,
        knownBy: `which of the readings of the ${of} was misread`,
        test:
          was !== undefined
            ? `strike out with the reason what was read ${was}`
            : other === undefined
              ? 'read it once more, the same way, and strike out with the reason what was misread'
              : 'ask which arm was on it at each reading; if nobody moved one, read it once more, the same way, and strike out with the reason what was misread',
        ...(was === undefined ? {} : { byLooking: true }),
        ...(of === 'valve lift' ? { alsoOf: ['ratio', 'consequences'] } : {}),
        restsOn: [...restsOn].sort(),
      },
      {
        about: valveSubject(row),
        step: 'sheet',
        among,
        answers: evidence.answers,
        choices: other === undefined ? CHOICES : [...CHOICES, CHANGED_OVER],
      },
    );
  });
}
