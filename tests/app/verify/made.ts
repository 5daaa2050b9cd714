import type { Manifest } from '../../../src/history/manifest.js';

/** A manifest that is made up, of two pages and without files. */
export const manifest = (over: Partial<Manifest> = {}): Manifest => ({
  form: 'gusset-manifest/2',
  tool: 'gusset 0.2.0',
  browser: 'Browser/1',
  pictures: 'library 1',
  document: 'EX-1',
  as: 'submission',
  photos: 'print',
  build: 'examplia',
  commit: 'c'.repeat(40),
  date: '2026-01-01',
  dirty: [],
  inputs: [],
  attachments: [],
  pages: ['1'.repeat(64), '2'.repeat(64)],
  content: '3'.repeat(64),
  ...over,
});
