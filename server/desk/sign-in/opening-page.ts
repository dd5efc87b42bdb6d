import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { hashOf, kindOfSecret } from '../../auth/secrets.ts';
import { openShareLink, shareLinkState } from '../../auth/sign-in.ts';
import { Failure } from '../../problems/failure.ts';
import { dayText } from '../../web/dates.ts';
import type { Deps } from '../../web/deps.ts';
import { renderPage } from '../../web/pages/render.ts';
import { setSecretCookie } from '../../web/principals.ts';
import { keepToItself } from './private-answer.ts';

function openingPage(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  secret: string,
): Promise<FastifyReply> {
  keepToItself(deps, reply);
  return renderPage(deps, request, reply, {
    template: 'plain',
    title: 'Open your build',
    side: 'open',
    data: {
      title: 'Open the build that the desk shares with you',
      intro:
        'The desk sent you this link for one build. Whoever has the link can see it and enter readings, so keep it to yourself.',
      sections: [
        {
          template: '/parts/form',
          data: { action: `/b/${secret}`, slots: [], buttons: [{ kind: 'primary', label: 'Open my build' }] },
        },
      ],
    },
  });
}

const neverMade = () =>
  new Failure('not-found', 'this link was never made here, or a part of it was lost on the way');

/** A link that ended is told so before anything is pressed, and one that never was is told that. */
async function requireOpen(deps: Deps, secret: string): Promise<void> {
  if (kindOfSecret(secret) !== 'link') throw neverMade();
  const state = await shareLinkState(deps.db, hashOf(secret), deps.now());
  if (state.is === 'ended') throw new Failure('gone', `this link ended on ${dayText(state.on, new Date())}`);
  if (state.is === 'never-made') throw neverMade();
}

/** Opening a share link. */
export function openingRoutes(app: FastifyInstance, deps: Deps): void {
  // Looking at the link spends nothing: scanners of mail and text messages open links too.
  app.get<{ Params: { secret: string } }>(
    '/b/:secret',
    { schema: { hide: true } },
    async (request, reply) => {
      const { secret } = request.params;
      await requireOpen(deps, secret);
      return openingPage(deps, request, reply, secret);
    },
  );
  app.post<{ Params: { secret: string } }>(
    '/b/:secret',
    { schema: { hide: true } },
    async (request, reply) => {
      const { secret } = request.params;
      const opened =
        kindOfSecret(secret) === 'link'
          ? await openShareLink(deps.db, hashOf(secret), deps.now())
          : undefined;
      if (opened === undefined) {
        await requireOpen(deps, secret);
        throw neverMade();
      }
      setSecretCookie(reply, deps, 'bench', opened.secret, opened.expiresAt);
      return reply
        .code(303)
        .headers({ location: '/bench', 'cache-control': 'no-store', 'referrer-policy': 'no-referrer' })
        .send();
    },
  );
}
