import type { Derived } from '../engine/told.js';
import type { Work } from '../engine/work.js';

/** Systems that stay as the maker meant them, and the items of the codes that ask after each. */

export const systems = {
  catalyst: 'catalytic converter',
  canister: 'evaporative canister with its valve and hoses',
  'crankcase-ventilation': 'positive crankcase ventilation',
  'exhaust-recirculation': 'exhaust gas recirculation',
  'air-injection': 'secondary air injection',
  'oxygen-sensor': 'oxygen sensor',
  'stability-control': 'electronic stability control',
  antilock: 'antilock brakes',
  airbag: 'airbag',
  'belt-tensioner': 'belt tensioner',
  'airbag-circuit': 'wiring and control unit of airbags and tensioners',
  'child-restraint': 'anchorage of a child restraint',
  'steering-column': 'steering column that gives way in a crash',
  'fault-lamp': 'fault lamp',
} as const;
type System = keyof typeof systems;

export const becomes = {
  kept: 'as it was',
  replaced: 'replaced by a part that the maker lists for this car',
  altered: 'altered',
  moved: 'moved to another place',
  disabled: 'there, but disabled',
  removed: 'taken out',
  'never-fitted': 'the car was built without it',
} as const;

export interface Retained {
  id: string;
  system?: System | undefined;
  now?: keyof typeof becomes | undefined;
  because?: string | undefined;
}

const asked: Readonly<Record<string, readonly System[]>> = {
  'exhaust.catalyst': ['catalyst'],
  'engine.canister': ['canister'],
  'engine.canister-sa': ['canister'],
  'engine.crankcase-ventilation': ['crankcase-ventilation'],
  'engine.emission-equipment': [
    'catalyst',
    'canister',
    'crankcase-ventilation',
    'exhaust-recirculation',
    'air-injection',
    'oxygen-sensor',
  ],
  'brakes.stability-control': ['stability-control'],
  'retained.antilock': ['antilock'],
  'seating.airbags-kept': ['airbag', 'belt-tensioner'],
  'electrical.airbag-circuits': ['airbag-circuit'],
  'seating.child-points': ['child-restraint'],
  'steering.collapse': ['steering-column'],
};
const stopping = ['brakes.stability-control', 'seating.airbags-kept', 'electrical.airbag-circuits'];

const isLost = (r: Retained) => r.now !== undefined && !['kept', 'replaced', 'never-fitted'].includes(r.now);
const told = (r: Retained) => `${systems[r.system!]} ${r.id}: ${becomes[r.now!]}${r.because ? ` (${r.because})` : ''}`;
const ofItem = (item: string, list: readonly Retained[]) =>
  list.filter((r) => r.now && r.system && asked[item]!.includes(r.system));

/** What the list says to each item of the codes; silent where it names none of the systems that an item asks after. */
export function answersOf(list: readonly Retained[]): Record<string, Derived | undefined> {
  return Object.fromEntries(Object.keys(asked).map((item) => [item, answerOf(item, ofItem(item, list))]));
}

function answerOf(item: string, list: readonly Retained[]): Derived | undefined {
  if (list.length === 0) return undefined;
  const lost = list.filter(isLost);
  if (lost.length > 0)
    return { answer: 'no', because: lost.map(told).join('; '), from: ['systems', lost[0]!.id, 'now'] };
  if (list.every((r) => r.now === 'never-fitted'))
    return {
      answer: 'not applicable',
      because: `the car was built without ${list.map((r) => systems[r.system!]).join(', ')}`,
      from: ['systems'],
    };
  const named = asked[item]!.length > 2 ? list.map((r) => systems[r.system!]).join(', ') : undefined;
  return { answer: 'yes', because: named, from: ['systems'] };
}

/** What was disabled, moved or taken out of what protects people stops the note, whatever another note answers. */
export function examineLost(list: readonly Retained[], work: Work): void {
  for (const item of stopping) {
    for (const one of ofItem(item, list).filter(isLost)) {
      work.state(item, one.id, 'against', `${told(one)}; this stops the note until the certifier has decided`, {
        stop: true,
        answer: 'no',
        todo: 'stop work on it and put it to the certifier',
        path: ['systems', one.id, 'now'],
      });
    }
  }
}

/** `yes` where a system is there, `no` where the car was built without it. */
export function presence(system: System, list: readonly Retained[]): 'yes' | 'no' | undefined {
  const found = list.filter((r) => r.system === system && r.now);
  if (found.length === 0) return undefined;
  return found.every((r) => r.now === 'never-fitted') ? 'no' : 'yes';
}
