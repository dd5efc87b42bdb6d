import type { Component } from '../../../views/parts/part.ts';
import { notice, run, section } from '../../call/report-parts.ts';
import { specFacts } from '../../call/spec/spec-facts.ts';
import type { Build } from '../../records/builds/builds.ts';

/** Everything known of the build, group by group. */
export function buildReport({ spec, revision }: Build): Component {
  const groups = specFacts(spec);
  return section(
    `The build, revision ${revision}`,
    groups.length === 0
      ? [notice('Nothing of the build is entered yet.')]
      : groups.flatMap(({ legend, facts }) => run(legend, facts)),
  );
}
