import { defined } from '../../../../shared/defined.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { studCautions } from '../../consequences/cautions.ts';
import { STUD_LOAD } from '../../kit/allowances.ts';
import { loadSaid } from '../../kit/say-inches.ts';
import { LBF } from '../../kit/si.ts';
import type { AssessedQuestion, Headline, NotToRun } from '../assessment.ts';
import { listed, lowerFirst, nominalSaid, upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { ChangeDetail } from './detail.ts';
import { type OpenLoad, studsAsked } from './stud-asked.ts';

type Worked = Pick<ChangeDetail, 'plan' | 'beside' | 'figures' | 'today'>;

/** What is told of the studs: in the answer where the spring opens past what is usual, else as a caution. */
interface StudsTold {
  readonly headlines: readonly Headline[];
  readonly cautions: readonly string[];
  readonly questions: readonly AssessedQuestion[];
  readonly notToRun: readonly NotToRun[];
}

const BUILD = { of: 'build' } as const;

const openLoadOf = ({ figures }: Worked): OpenLoad | undefined =>
  figures.find(({ name }) => name === 'open-load')?.after;

interface PlanLoad {
  readonly load: OpenLoad;
  readonly plan?: number;
  readonly beside?: true;
  /** What is on now, where something is planned: `the 1.5 they are sold as`. */
  readonly today?: string;
}

/** The most that any of the springs opens at with each plan, and with what is on now, the one that loads them most first. */
function loadsOf(details: readonly Worked[]): readonly PlanLoad[] {
  const all = details
    .flatMap((detail): PlanLoad[] => {
      const load = openLoadOf(detail);
      const { plan, beside, today } = detail;
      return [
        ...(load === undefined ? [] : [{ load, ...defined({ plan, beside }) }]),
        ...(today === undefined ? [] : [{ load: today.load, today: today.said }]),
      ];
    })
    .toSorted((a, b) => b.load.high - a.load.high || (b.plan ?? 0) - (a.plan ?? 0));
  return all.filter(({ plan }, at) => all.findIndex((each) => each.plan === plan) === at);
}

/** `the planned 1.6`, `what is on now, the 1.5 they are sold as`; nothing where no ratio is planned. */
function withSaid({ plan, today }: PlanLoad): string | undefined {
  if (plan !== undefined) return `with the planned ${nominalSaid(plan)}`;
  return today === undefined ? undefined : `with what is on now, ${today}`;
}

/** The same where a sentence goes on. */
function withGoingOn(load: PlanLoad): string | undefined {
  const said = withSaid(load);
  return said === undefined || load.today === undefined ? said : `${said},`;
}

/** What the springs open at with the other plans and as it is: dropping one plan does not bring it up. */
function othersSaid(loads: readonly PlanLoad[]): string {
  const said = loads.slice(1).flatMap((each) => {
    const what = withGoingOn(each);
    const isOver = each.load.value >= STUD_LOAD.from * LBF;
    return what === undefined || !isOver ? [] : [`${what} at up to ${loadSaid(each.load.high)}`];
  });
  return said.length === 0 ? '' : ` ${upperFirst(listed(said))}.`;
}

interface Asked extends PlanLoad {
  readonly question: AssessedQuestion;
}

/** What is asked of the studs: of the most, and where their maker allows less, of what the next plan comes to. */
function askedOf(evidence: Evidence, loads: readonly PlanLoad[]): Asked[] {
  const asked: Asked[] = [];
  const isOfSeveral = loads.filter(({ plan }) => plan !== undefined).length > 1;
  for (const each of loads) {
    const question = studsAsked(evidence, each.load, isOfSeveral ? withSaid(each) : undefined);
    asked.push({ ...each, question });
    if (question.answered?.found !== true) break;
  }
  return asked;
}

/** Their maker allows less: that is held to, whatever the gaps say. */
function overLoaded({ plan, beside, today }: PlanLoad, at: number): NotToRun {
  const asItIs = today === undefined ? 'Do not run it' : 'Do not run it with what is on now';
  const start = plan === undefined ? asItIs : `Don’t fit the planned ${nominalSaid(plan)}`;
  const key = plan === undefined ? ':now' : `:planned-${nominalSaid(plan)}`;
  return {
    id: `not-to-run:studs${at === 0 ? '' : key}`,
    about: BUILD,
    what: plan === undefined ? 'run' : 'fit',
    ...defined({ beside }),
    sentence: `${start}: the studs’ maker allows less than the springs open at.`,
    wayOut:
      'Fit studs whose maker allows the load, or softer springs; a qualified shop looks before it runs.',
  };
}

/** The word on the studs, by the most that any spring may bear. */
export function studsTold(evidence: Evidence, details: readonly Worked[]): StudsTold {
  const { mounting, studSize: size } = evidence.engine;
  const loads = loadsOf(details);
  const [most] = loads;
  const [said] = studCautions(defined({ mounting, size, openLoad: most?.load.high }));
  const nothing: StudsTold = { headlines: [], cautions: [], questions: [], notToRun: [] };
  if (most === undefined || said === undefined) return nothing;
  const withWhat = loads.length > 1 ? withGoingOn(most) : undefined;
  const ofMost = withWhat === undefined ? said : `${upperFirst(withWhat)} ${lowerFirst(said)}`;
  if (most.load.value < STUD_LOAD.from * LBF) return { ...nothing, cautions: [ofMost] };
  const isHeavy = most.load.value > STUD_LOAD.to * LBF;
  // What is near the usual limit is asked where the call is about what the ratio does.
  if (!isHeavy && !planOf(evidence.call.goal).asks.includes('consequences'))
    return { ...nothing, cautions: [ofMost] };
  const asked = askedOf(evidence, loads);
  const isAllowed = asked[0]?.question.answered?.found === false;
  const sentence = `${ofMost}${othersSaid(loads)}`;
  return {
    ...nothing,
    questions: asked.map(({ question }) => question),
    ...(isAllowed
      ? { cautions: [sentence] }
      : { headlines: [{ id: 'headline:change:studs', about: BUILD, step: 'consequences', sentence }] }),
    notToRun: asked.filter(({ question }) => question.answered?.found === true).map(overLoaded),
  };
}
