import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { hashOf, kindOfSecret } from '../../auth/secrets.ts';
import { openShareLink } from '../../auth/sign-in.ts';
import { Failure } from '../../problems/failure.ts';
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
      // Whether the link still opens anything is known once it is pressed.
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

/** Opening a share link. */
export function openingRoutes(app: FastifyInstance, deps: Deps): void {
  // Looking at the link spends nothing: scanners of mail and text messages open links too.
  app.get<{ Params: { secret: string } }>('/b/:secret', { schema: { hide: true } }, (request, reply) => {
    if (kindOfSecret(request.params.secret) !== 'link') throw new Failure('not-found', 'nothing is here');
    return openingPage(deps, request, reply, request.params.secret);
  });
  app.post<{ Params: { secret: string } }>(
    '/b/:secret',
    { schema: { hide: true } },
    async (request, reply) => {
      const { secret } = request.params;
      const opened =
        kindOfSecret(secret) === 'link'
          ? await openShareLink(deps.db, hashOf(secret), deps.now())
          : undefined;
      if (opened === undefined) throw new Failure('not-found', 'this link has ended, or was never made');
      setSecretCookie(reply, deps, 'bench', opened.secret, opened.expiresAt);
      return reply
        .code(303)
        .headers({ location: '/bench', 'cache-control': 'no-store', 'referrer-policy': 'no-referrer' })
        .send();
    },
  );
}
