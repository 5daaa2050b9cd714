import type { Kind } from '../kind.js';
import { bodyStructure } from './body-structure.js';
import { driveline } from './driveline.js';
import { engine } from './engine.js';
import { suspensionLink } from './suspension-link.js';

/** The only register of kinds, in alphabetical order. */
export const kinds: ReadonlyMap<string, Kind> = new Map(
  [
    bodyStructure,
    driveline,
    engine,
    suspensionLink,
  ].map((kind) => [kind.id, kind]),
);
