import { STEP_NAMES } from '../../shared/steps.ts';
import { linesOf } from '../tools/call-faces.ts';
import type { Person, TestService } from '../tools/service.ts';
import type { Played } from './play.ts';

export interface FaceRead {
  readonly name: string;
  readonly lines: readonly string[];
}

/** Every page of a call as the desk is sent it: the steps that there are for it, report, takeover card, worksheet. */
export async function facesRead(
  service: TestService,
  person: Person,
  { callId }: Played,
): Promise<FaceRead[]> {
  const read: FaceRead[] = [];
  const paths = [...STEP_NAMES.map((step) => `steps/${step}`), 'report', 'takeover', 'worksheet'];
  for (const name of paths) {
    const { statusCode, body } = await service.request({
      url: `/calls/${callId}/${name}`,
      cookies: person.cookies,
    });
    if (statusCode !== 200) throw new Error(`${name}: ${statusCode}`);
    read.push({ name, lines: linesOf(body) });
  }
  return read;
}
