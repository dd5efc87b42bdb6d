import { describeBuild, keepReading, METHOD, openCall, startSetUp } from './call.ts';
import type { Person, TestService } from './service.ts';

/** What an invented engine is described as: lobe .350, springs that clear. */
export const SPEC = {
  engine: {
    lifter: 'solid-flat',
    rockerMounting: 'stud',
    stroke: '3.48 in',
    rodLength: '5.7 in',
    valveAngle: '23 deg',
  },
  cam: {
    assumedRatio: 1.5,
    intake: {
      lobeLift: '.350 in',
      centreline: '106 deg',
      durations: [{ atLift: '.006 in', duration: '280 deg' }],
    },
  },
  springs: {
    installedHeight: '1.900 in',
    seatLoad: '130 lbf',
    rate: '350 lbf/in',
    solidHeight: '1.150 in',
    retainerToSeal: '.650 in',
  },
};

/** A light-spring set-up on 1 intake that reads .560 on a .350 lobe. */
export async function measured(
  service: TestService,
  person: Person,
  spec: object = SPEC,
  method: object = { ...METHOD, spring: 'light' },
) {
  const { buildId, callId } = await openCall(service, person);
  await describeBuild(service, person, buildId, spec);
  const setUpId = await startSetUp(service, person, buildId, method);
  for (const lift of ['.350 in', '.350 in', '.350 in'])
    await keepReading(service, person, buildId, setUpId, 'lobe-lift', lift);
  for (const lift of ['.560 in', '.560 in', '.560 in'])
    await keepReading(service, person, buildId, setUpId, 'valve-lift', lift);
  return { buildId, callId, setUpId, url: `/api/v1/builds/${buildId}/set-ups/${setUpId}/consequences` };
}
