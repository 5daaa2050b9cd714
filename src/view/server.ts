import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { MachineFailure } from '../platform/failure.js';
import { fontFaces, fontsDirectory } from '../platform/fonts.js';
import { type Shown, updateFrom } from './preview.js';
import { refusalOf } from './refuse.js';
import { script, scripts, shell, style } from './shell.js';

/** What the server shows. It serves nothing else: what is asked for is looked up by its whole name, never as a path. */
export interface Source {
  /** As the user named it. */
  build: string;
  shown: () => Shown;
  /** Calls the listener after every change; returns what ends that. */
  onChange: (listener: (before: Shown, now: Shown) => void) => () => void;
  /** The prepared photo of that name. */
  photo: (name: string) => { file: string; mime: string } | undefined;
}

export interface Server {
  url: string;
  close: () => Promise<void>;
}

const fonts = new Set([...fontFaces('').matchAll(/url\('([^']+)'\)/g)].map(([, name]) => name!));

/**
 * Serves a preview on this machine's own address. Port 0 takes a free one. Throws MachineFailure where the port is taken.
 */
export async function serve(source: Source, port: number): Promise<Server> {
  const open = new Set<ServerResponse>();
  const server = createServer((request, response) => {
    const refusal = refusalOf(request, (server.address() as AddressInfo).port);
    if (refusal) return answer(response, refusal.status, 'text/plain; charset=utf-8', `${refusal.says}\n`);
    void route(request, response).catch(() => response.destroy());
  });

  async function route(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const [path = '', query = ''] = (request.url ?? '').split('?');
    const [, folder, name = ''] = /^\/(fonts|photos)\/([^/]+)$/.exec(path) ?? [];
    if (path === '/') return answer(response, 200, 'text/html; charset=utf-8', shell(source.shown(), source.build));
    if (scripts.has(path.slice(1)))
      return answer(response, 200, 'text/javascript; charset=utf-8', script(path.slice(1)));
    if (path === '/view.css') return answer(response, 200, 'text/css; charset=utf-8', style());
    if (path === '/events') return tell(request, response, new URLSearchParams(query).get('version'));
    if (folder === 'fonts' && fonts.has(name))
      return answer(response, 200, 'font/woff2', await readFile(fontsDirectory + name));
    const photo = folder === 'photos' ? source.photo(name) : undefined;
    if (photo) return answer(response, 200, photo.mime, await readFile(photo.file));
    return answer(
      response,
      404,
      'text/plain; charset=utf-8',
      'There is no such thing here: the preview serves the document and its photos.\n',
    );
  }

  /** Tells the page first what it has missed, then every change. */
  function tell(request: IncomingMessage, response: ServerResponse, loaded: string | null): void {
    answerHead(response, 200, 'text/event-stream; charset=utf-8');
    if (request.method === 'HEAD') return void response.end();
    const send = (before: Shown | undefined, now: Shown) =>
      response.write(`id: ${now.version}\nevent: shown\ndata: ${JSON.stringify(updateFrom(before, now))}\n\n`);
    const now = source.shown();
    send((request.headers['last-event-id'] ?? loaded) === now.version ? now : undefined, now);
    const forget = source.onChange(send);
    open.add(response);
    response.on('close', () => {
      forget();
      open.delete(response);
    });
  }

  await new Promise<void>((resolve, reject) => {
    server.once('error', (cause) => reject(portRefused(port, cause)));
    server.listen(port, '127.0.0.1', resolve);
  });
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((resolve) => {
        for (const response of open) response.end();
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function answerHead(response: ServerResponse, status: number, type: string): void {
  response.writeHead(status, {
    'Content-Type': type,
    'Cache-Control': 'no-store',
    'Content-Security-Policy':
      "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data:; font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Referrer-Policy': 'no-referrer',
    'X-Content-Type-Options': 'nosniff',
  });
}

function answer(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  answerHead(response, status, type);
  response.end(response.req.method === 'HEAD' ? undefined : body);
}

function portRefused(port: number, cause: Error): MachineFailure {
  const taken = (cause as NodeJS.ErrnoException).code === 'EADDRINUSE';
  return new MachineFailure({
    found: taken ? `another program already answers on port ${port}` : `port ${port} cannot be used: ${cause.message}`,
    expected: 'a port of this machine that is free',
    todo: 'leave `--port` out, or name another',
    cause,
  });
}
