import { buildOf } from '../mechanics/assessment/laws/builds.ts';
import { type Face, facesOf } from './call-faces.ts';
import { callOf, recordOf } from './record-of-evidence.ts';

const made = new Map<number, readonly Face[]>();

/** Every page of the call of a generated build, rendered once for all the tests of this process that read it. */
function facesOfBuild(seed: number): readonly Face[] {
  const known = made.get(seed);
  if (known !== undefined) return known;
  const evidence = buildOf(seed);
  const faces = facesOf(recordOf(evidence), callOf(evidence).id);
  made.set(seed, faces);
  return faces;
}

/** The same of the first so many builds. */
export const facesOfBuilds = (count: number): readonly Face[] =>
  Array.from({ length: count }, (_, index) => facesOfBuild(index + 1)).flat();
