import type { FastifyRequest } from 'fastify';
import type { Deps } from '../deps.ts';

/** The address that people type, without its last stroke: the one that is set, or else the one of this request. */
export const originOf = ({ config }: Pick<Deps, 'config'>, request: FastifyRequest): string =>
  config.PUBLIC_URL?.replace(/\/$/, '') ?? `${request.protocol}://${request.host}`;
