import { readFileSync } from 'node:fs';

const { name, version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { name: string; version: string };

/** Name and version of this program, as printed in documents. */
export const tool = `${name} ${version}`;
