import { describe } from 'vitest';
import { sheets } from '../../../src/calc/engine/index.js';
import values from '../../reference/engine.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of engine', () => referenceRules(sheets, values as never));
