import type { Call } from './call.ts';
import { OF_ANSWERS } from './of-answers.ts';
import { OF_ANSWERS_ON_SHEET } from './of-answers-on-sheet.ts';
import { OF_ARMS } from './of-arms.ts';
import { OF_CARD } from './of-card.ts';
import { OF_CHANGE } from './of-change.ts';
import { OF_CHANGE_PARTS } from './of-change-parts.ts';
import { OF_CHANGED_ARMS } from './of-changed-arms.ts';
import { OF_DOUBTS } from './of-doubts.ts';
import { OF_GROUPS } from './of-groups.ts';
import { OF_HEAT } from './of-heat.ts';
import { OF_HYDRAULIC } from './of-hydraulic.ts';
import { OF_LOCK } from './of-lock.ts';
import { OF_NOISE } from './of-noise.ts';
import { OF_OLD_ARMS } from './of-old-arms.ts';
import { OF_ORDER } from './of-order.ts';
import { OF_OTHERS } from './of-others.ts';
import { OF_OWN_ARMS } from './of-own-arms.ts';
import { OF_PART } from './of-part.ts';
import { OF_PIECES } from './of-pieces.ts';
import { OF_PUT_RIGHT } from './of-put-right.ts';
import { OF_RATIO } from './of-ratio.ts';
import { OF_SCAN } from './of-scan.ts';
import { OF_SCAN_ARMS } from './of-scan-arms.ts';
import { OF_SET_AGAIN } from './of-set-again.ts';
import { OF_SETTING } from './of-setting.ts';
import { OF_SHEET } from './of-sheet.ts';
import { OF_SIDE } from './of-side.ts';
import { OF_STOP } from './of-stop.ts';
import { OF_TURNS } from './of-turns.ts';

/** The calls by what they are about. */
export const CALLS_ABOUT = {
  ratio: [...OF_RATIO, ...OF_ARMS, ...OF_ANSWERS, ...OF_ORDER, ...OF_PUT_RIGHT],
  change: [...OF_CHANGED_ARMS, ...OF_CHANGE, ...OF_CHANGE_PARTS, ...OF_OLD_ARMS],
  part: [...OF_PART, ...OF_PIECES],
  sheet: [...OF_SHEET, ...OF_SIDE, ...OF_GROUPS, ...OF_ANSWERS_ON_SHEET, ...OF_OWN_ARMS],
  setting: [...OF_SETTING, ...OF_TURNS, ...OF_HEAT, ...OF_SET_AGAIN, ...OF_HYDRAULIC],
  noise: [...OF_NOISE, ...OF_LOCK],
  others: [...OF_STOP, ...OF_SCAN, ...OF_SCAN_ARMS, ...OF_OTHERS, ...OF_DOUBTS, ...OF_CARD],
} satisfies Readonly<Record<string, readonly Call[]>>;

/** Every call of the table. */
export const CALLS: readonly Call[] = Object.values(CALLS_ABOUT).flat();
