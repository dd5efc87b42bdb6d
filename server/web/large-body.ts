import type { FastifyRequest, RouteShorthandOptions } from 'fastify';

/** A route whose body may be larger than usual: `known` refuses whoever is not known, before any of it is read. */
export const largeBody = (
  bodyLimit: number | undefined,
  known: (request: FastifyRequest) => Promise<unknown>,
): Pick<RouteShorthandOptions, 'bodyLimit' | 'onRequest'> =>
  bodyLimit === undefined
    ? {}
    : {
        bodyLimit,
        onRequest: async (request) => {
          await known(request);
        },
      };
