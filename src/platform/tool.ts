import { readFileSync } from 'node:fs';
import { packageFile } from './package-file.js';

const { name, version } = JSON.parse(readFileSync(packageFile('package.json'), 'utf8')) as {
  name: string;
  version: string;
};

/** Name and version of this program, as printed in documents. */
export const tool = `${name} ${version}`;
