import type { IncomingMessage } from 'node:http';

/**
 * Pages of other sites can send requests to this machine's own address. They are known by the name they use for it (Host),
 * by where they come from (Origin), or by what the browser says of them (Sec-Fetch-Site), and get nothing.
 */
export function refusalOf(
  { headers, method }: Pick<IncomingMessage, 'headers' | 'method'>,
  port: number,
): { status: 403 | 405; says: string } | undefined {
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  if (headers.host === undefined || !hosts.includes(headers.host))
    return { status: 403, says: `Asked for under another name than ${hosts.join(' or ')}.` };
  if (headers.origin !== undefined && headers.origin !== `http://${headers.host}`)
    return { status: 403, says: 'Asked for by a page of another site.' };
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    return { status: 403, says: 'Asked for by a page of another site.' };
  if (method !== 'GET' && method !== 'HEAD')
    return { status: 405, says: 'The preview only shows; it takes nothing in.' };
  return undefined;
}
