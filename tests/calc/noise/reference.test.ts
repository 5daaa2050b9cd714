import { describe } from 'vitest';
import { sheets } from '../../../src/calc/noise/index.js';
import values from '../../reference/noise.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of noise', () => referenceRules(sheets, values as never));
