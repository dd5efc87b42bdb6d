import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { answersOf } from '../common/answers-of.ts';
import { asked, type Doubt } from '../common/asked.ts';
import { inches, valveSubject } from '../common/said.ts';
import type { AnswerEvidence, SheetEvidence } from '../evidence.ts';
import type { LotFigure } from './lot.ts';
import type { SheetRow } from './rows.ts';

const COUNTS = ['no', 'one', 'two', 'three'];

function doubtOf(readings: readonly SheetEvidence[], apart: LotFigure['apart'][number]): Doubt[] {
  const entry = readings.find(({ id }) => id === apart.entryId);
  if (entry === undefined) return [];
  const turns = Math.abs(apart.turns);
  const how = apart.off < 0 ? 'under' : 'over';
  const onDial = entry.tool === 'indicator' || entry.tool === 'not-said';
  const said = `${asEntered(entry.readAs)} is ${inches(Math.abs(apart.off))} ${how} the others`;
  return [
    {
      code: 'pass-apart',
      weight: 'weak',
      ask:
        turns === 0 || !onDial
          ? `Was ${asEntered(entry.readAs)} read or written wrong?`
          : `Was ${COUNTS[turns] ?? turns} ${turns === 1 ? 'turn' : 'turns'} ${apart.off < 0 ? 'missed' : 'too many counted'} in ${asEntered(entry.readAs)}?`,
      size: `${said}; the others are not averaged with it.`,
      test: onDial
        ? 'Read the small hand, take one more pass, and strike out the one that was wrong.'
        : 'Read it once more, with a dial indicator if there is one, and strike out the one that was wrong.',
      restsOn: [entry.id],
    },
  ];
}

/** A pass that stands apart from the others is named; it is not in the figure, so nothing else waits for it. */
export function passesApartQuestion(row: SheetRow, answers: readonly AnswerEvidence[]): AssessedQuestion[] {
  const lots = [
    ...(row.lobe === undefined ? [] : [{ readings: row.lobes, figure: row.lobe }]),
    ...row.everyLift,
  ];
  return lots.flatMap(({ readings, figure }) =>
    figure.apart
      .flatMap((apart) => doubtOf(readings, apart).map((doubt) => ({ doubt, apart })))
      .map(({ doubt, apart }) =>
        asked(doubt, {
          about: valveSubject(row),
          step: 'sheet',
          among: apart.entryId,
          answers,
          choices: answersOf('pass-apart'),
        }),
      ),
  );
}
