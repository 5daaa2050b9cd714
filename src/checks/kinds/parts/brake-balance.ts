import { adhesionUtilisation } from '../../../calc/brakes/adhesion.js';
import { dualBrakes, tandemBrakes } from '../../../calc/brakes/chain.js';
import { circuitFailure } from '../../../calc/brakes/circuit-failure.js';
import { brakeDisplacement } from '../../../calc/brakes/displacement.js';
import { brakeDistribution } from '../../../calc/brakes/distribution.js';
import { valveCrossing } from '../../../calc/brakes/valve-crossing.js';
import type { Value } from '../../../calc/value.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import type { Brakes, System } from '../brakes-fields.js';
import { type Balance, settleFrontFirst } from './front-first.js';
import { difference, given, sum, times } from './maybe.js';
import { isByDefault, takeUnmeasured } from './unmeasured.js';

type Axle = 'front' | 'rear';
type State = 'was' | 'planned' | 'now';
type Field = Exclude<keyof NonNullable<System['front']>, 'type' | 'part' | 'pads' | 'mount'>;

/** Rolling circumference over overall diameter of a radial tyre (ETRTO), over one turn. */
const rollingRadius = 3.05 / (2 * Math.PI);

interface Chain {
  frontForce: Maybe;
  rearForce: Maybe;
  frontPressure: Maybe;
  rearPressure: Maybe;
  share: Maybe;
  deceleration: Maybe;
}
type Vehicle = Balance['vehicle'];

/** Pressure, torque, shares of the axles and what is left with one circuit, for the car as weighed and laden. */
export function examineBalance(data: Brakes, work: Work): void {
  const state: State = data.now || !data.planned ? 'now' : 'planned';
  const wheelbase = work.fact('wheelbase');
  const light = {
    frontMass: work.fact('mass_front'),
    rearMass: work.fact('mass_rear'),
    massHeight: work.fact('cg_height'),
    wheelbase,
  };
  const laden = {
    frontMass: work.take(data.laden?.front, 'laden', 'front'),
    rearMass: work.take(data.laden?.rear, 'laden', 'rear'),
    massHeight: work.take(data.laden?.['cg-height'], 'laden', 'cg-height'),
    wheelbase,
  };
  const marks = marksOf(data[state]);
  for (const [load, vehicle] of [
    ['unladen', light],
    ['laden', laden],
  ] as const) {
    const worked = chain(state, sum(vehicle.frontMass, vehicle.rearMass), data, work, load);
    const { frontForce, rearForce, share, deceleration } = worked;
    const balance = work.sheet(brakeDistribution, load, {
      ...vehicle,
      frontShare: share,
      rate: times(deceleration, 1 / g, 'over 9.80665 m/s²'),
    });
    work.sheet(adhesionUtilisation, load, { ...vehicle, frontShare: share, regulation: 'un-r13' });
    const valve = withValve(state, load, vehicle, worked, data, work);
    const crossing = valve ? valve.get('crossing') : balance.get('crossing');
    work.compare('brakes.front-first', load, crossing, {
      marks,
      settle: settleFrontFirst(
        { load, vehicle, share, friction: frictions(state, data, work), knee: valve?.get('kneeRate') },
        work,
      ),
    });
    if (load === 'unladen') againstOriginal(crossing, data, work, marks);
    const split = data[state]?.split;
    const left = split === 'diagonal' ? (['diagonal'] as const) : split === 'axles' ? (['front', 'rear'] as const) : [];
    for (const remaining of left)
      work.sheet(circuitFailure, `${load}-${remaining}`, { ...vehicle, frontForce, rearForce, remaining });
    if (load === 'laden' && balance.run?.results)
      work.state('brakes.balance-sheet', '', 'met', 'shown by the sheets of pressure and balance of this note', {
        run: balance.run.id,
        answer: 'reckoned',
      });
  }
  displacement(state, data, work);
}

const g = 9.80665;

/** Says that friction, factor or booster have their uncertainty from the table of what cannot be measured. */
const marksOf = (system: System | undefined): string[] =>
  [
    ...(['front', 'rear'] as const).map((axle) => system?.[axle]?.[frictionField(system[axle]?.type)]),
    ...(['valve-knee', 'valve-slope'] as const).map((name) => system?.[name]),
  ].some(isByDefault)
    ? ['uncertainty of friction, brake factor or valve from common practice']
    : [];

/**
 * The car as it came, with the masses with which it came. Where pads or drums stayed, what is not known of them is the same before
 * and after and falls out of the change.
 */
function againstOriginal(now: Maybe, data: Brakes, work: Work, marks: readonly string[]): void {
  const item = 'brakes.balance-change';
  if (!data.was?.front || !data.was.rear)
    return work.state(item, '', 'out', 'the brakes as they came are not recorded', { path: ['was'] });
  const [front, rear] = (['mass_front', 'mass_rear'] as const).map((name) => work.fact(name, 'as-received')) as [
    Maybe,
    Maybe,
  ];
  const height = work.fact('cg_height', 'as-received');
  const vehicle: Vehicle = {
    frontMass: front,
    rearMass: rear,
    massHeight: isMissing(height) ? work.fact('cg_height') : height,
    wheelbase: work.fact('wheelbase'),
  };
  const weighed = sum(front, rear);
  const worked = chain('was', isMissing(weighed) ? work.fact('original_mass') : weighed, data, work);
  const valve = withValve('was', 'was', vehicle, worked, data, work);
  const was = valve
    ? valve.get('crossing')
    : work
        .sheet(adhesionUtilisation, 'was', { ...vehicle, frontShare: worked.share, regulation: 'un-r13' })
        .get('crossing');
  work.compare(item, '', difference(now, was), { marks });
}

/** The sheet for a car with a valve, or none where there is no valve. */
function withValve(state: State, subject: string, vehicle: Vehicle, worked: Chain, data: Brakes, work: Work) {
  const system = data[state];
  if (!system?.['valve-knee'] && !system?.['valve-slope']) return undefined;
  const { frontForce, rearForce, frontPressure, rearPressure } = worked;
  return work.sheet(valveCrossing, subject, {
    ...vehicle,
    frontForce,
    rearForce,
    frontPressure,
    rearPressure,
    valveKnee: takeUnmeasured('valve-knee', system['valve-knee'], [state, 'valve-knee'], work),
    valveSlope: takeUnmeasured('valve-slope', system['valve-slope'], [state, 'valve-slope'], work),
  });
}

const frictionField = (type: 'disc' | 'drum' | undefined) => (type === 'drum' ? 'factor' : 'friction');

/** What the force of an axle follows from, under the name of its pads: like pads and pads that stayed move together. */
function frictionOf(state: State, axle: Axle, data: Brakes, work: Work): Maybe {
  const brake = data[state]?.[axle];
  const name = frictionField(brake?.type);
  return takeUnmeasured(name, brake?.[name], [state, axle, name], work, likePads(name, axle, brake));
}

/** Words that name no pads. */
const unnamed = /unknown|not known|not stated|^\W*$/i;

function likePads(name: string, axle: Axle, brake: System['front']): string | undefined {
  const [pads, part] = [brake?.pads, brake?.part].map((words) =>
    words === undefined || unnamed.test(words) ? undefined : words.trim().toLowerCase().replace(/\s+/g, ' '),
  );
  if (pads) return `${name} of ${pads}`;
  return part && `${name} of the ${axle} brakes, ${part}`;
}

const frictions = (state: State, data: Brakes, work: Work): Balance['friction'] => {
  const one = (axle: Axle) => {
    const drum = data[state]?.[axle]?.type === 'drum';
    return {
      says: drum ? `brake factor of the ${axle} drums` : `friction of the ${axle} pads`,
      value: frictionOf(state, axle, data, work),
    };
  };
  return { front: one('front'), rear: one('rear') };
};

function chain(state: State, mass: Maybe, data: Brakes, work: Work, load?: string): Chain {
  const system = data[state];
  const take = (name: 'pedal-ratio' | 'bore' | 'front-bore' | 'rear-bore' | 'bar-share') =>
    work.take(system?.[name], state, name);
  const optional = (name: 'booster-ratio' | 'booster-assist' | 'valve-knee' | 'valve-slope') =>
    system?.[name] ? takeUnmeasured(name, system[name], [state, name], work) : undefined;
  const common = {
    pedalForce: work.take(data['pedal-force'], 'pedal-force'),
    pedalRatio: take('pedal-ratio'),
    efficiency: system?.efficiency
      ? takeUnmeasured('efficiency', system.efficiency, [state, 'efficiency'], work)
      : given(1, '1', 'no losses taken off'),
    mass,
    frontPistons: of('front', 'pistons'),
    frontPiston: of('front', 'piston'),
    frontFactor: factor('front'),
    frontRadius: of('front', 'radius'),
    frontRolling: rolling('front'),
    rearPistons: of('rear', 'pistons'),
    rearPiston: of('rear', 'piston'),
    rearFactor: factor('rear'),
    rearRadius: of('rear', 'radius'),
    rearRolling: rolling('rear'),
  };
  const subject = load ?? state;
  const worked =
    system?.layout === 'dual'
      ? work.sheet(dualBrakes, subject, {
          ...common,
          barShare: take('bar-share'),
          frontBore: take('front-bore'),
          rearBore: take('rear-bore'),
        })
      : work.sheet(tandemBrakes, subject, {
          ...common,
          bore: take('bore'),
          boosterRatio: optional('booster-ratio'),
          boosterAssist: optional('booster-assist'),
          valveKnee: optional('valve-knee'),
          valveSlope: optional('valve-slope'),
        });
  const get = worked.get as (name: keyof Chain) => Maybe;
  return {
    frontForce: get('frontForce'),
    rearForce: get('rearForce'),
    frontPressure: get('frontPressure'),
    rearPressure: get('rearPressure'),
    share: get('share'),
    deceleration: get('deceleration'),
  };

  function of(axle: Axle, name: Field): Maybe {
    return work.take(system?.[axle]?.[name], state, axle, name);
  }
  function factor(axle: Axle): Maybe {
    const brake = system?.[axle];
    if (!brake?.type) return work.lacks(state, axle, 'type');
    const friction = frictionOf(state, axle, data, work);
    return brake.type === 'drum' ? friction : times(friction, 2, 'on two sides of the disc');
  }
  function rolling(axle: Axle): Maybe {
    const tyre = work.fact(`tyre_diameter_${axle}`, state === 'was' ? 'as-received' : 'as-modified');
    return system?.[axle]?.rolling || isMissing(tyre)
      ? of(axle, 'rolling')
      : times(tyre, rollingRadius, 'rolling circumference 3.05 diameters, over one turn');
  }
}

/** Fluid that both circuits take, where the movement of the pistons was measured. */
function displacement(state: State, data: Brakes, work: Work): void {
  const system = data[state];
  const diagonal = system?.split === 'diagonal';
  const axle = (name: Axle) => {
    const brake = system?.[name];
    const take = (field: Field) => work.take(brake?.[field], state, name, field);
    const [piston, pistons] = [take('piston'), take('pistons')];
    const sides = 2 * (brake?.mount === 'fixed' || brake?.type === 'drum' ? 2 : 1);
    const area: Maybe =
      isMissing(piston) || isMissing(pistons)
        ? isMissing(piston)
          ? piston
          : pistons
        : areaOf(piston, pistons.si, sides);
    return { area, move: take('move'), swell: takeUnmeasured('swell', brake?.swell, [state, name, 'swell'], work) };
  };
  const [front, rear] = [axle('front'), axle('rear')];
  const bore = (which: Axle) =>
    system?.layout === 'dual'
      ? work.take(system[`${which}-bore`], state, `${which}-bore`)
      : work.take(system?.bore, state, 'bore');
  if (diagonal)
    return work.compare('brakes.stroke', '', {
      missing: [],
      reason: 'both circuits of a diagonal split move pistons of both axles, for which this sheet has no place',
    });
  const worked = work.sheet(brakeDisplacement, '', {
    bore1: bore('front'),
    area1: front.area,
    move1: front.move,
    swell1: front.swell,
    bore2: bore('rear'),
    area2: rear.area,
    move2: rear.move,
    swell2: rear.swell,
    arrangement:
      system?.layout === 'dual' ? 'parallel' : system?.layout === 'tandem' ? 'tandem' : work.lacks(state, 'layout'),
    available: work.take(system?.stroke, state, 'stroke'),
    pedalRatio: work.take(system?.['pedal-ratio'], state, 'pedal-ratio'),
  });
  work.compare('brakes.stroke', '', worked.get('used'));
}

/** Area of all pistons of an axle that the circuit moves. Its uncertainty is that of the diameter, twice over. */
function areaOf(diameter: Value, pistons: number, sides: number): Value {
  const area = (Math.PI / 4) * diameter.si ** 2 * pistons * sides;
  const parts = new Map([...diameter.parts].map(([source, part]) => [source, (part * 2 * area) / diameter.si]));
  return {
    ...diameter,
    si: area,
    unit: 'mm²',
    parts,
    origin: { kind: 'given', text: `${sides * pistons} areas of the piston's diameter` },
  };
}
