/** A way in which modified work can fail, what would come of it on the road, and the items that guard against it. */
export interface Failure {
  fails: string;
  effect: string;
  guards: readonly string[];
}

/** By kind of note, as common practice knows them; no published source. They are neither ranked nor complete. */
export const failures: Readonly<Record<string, readonly Failure[]>> = {
  alignment: [
    {
      fails: 'The wheels steer by themselves as the suspension moves',
      effect: 'The car wanders on bumps and under braking',
      guards: ['alignment.bump-steer', 'alignment.toe', 'alignment.caster'],
    },
    {
      fails: 'A joint of the linkage is worn or works loose',
      effect: 'A wheel turns out of line; steering is lost in part',
      guards: ['steering.free-play', 'links.forged-worked'],
    },
    {
      fails: 'The rear axle does not stand square',
      effect: 'The car pulls to one side and steps out when it brakes',
      guards: ['alignment.thrust'],
    },
  ],
  'body-structure': [
    {
      fails: 'The new member is weaker or softer than the one it replaces',
      effect: 'It bends or cracks under shock; the crash strength of the shell is less than was approved',
      guards: ['body.equivalence-strength', 'body.equivalence-stiffness', 'body.load'],
    },
    {
      fails: 'Stiff new material ends abruptly on thin sheet',
      effect: 'The sheet beside the joint cracks after some time, though the new part holds',
      guards: ['body.thickness-ratio', 'body.joint-form', 'body.fish-plate'],
    },
    {
      fails: 'A weld lacks penetration or size',
      effect: 'The joint tears under load without warning',
      guards: ['body.weld-standard', 'body.weld-procedure', 'body.weld-test', 'body.crack-test', 'body.welds-shown'],
    },
    {
      fails: 'The shell has lost stiffness in twist',
      effect: 'Doors bind, glass cracks, seams work loose, handling changes',
      guards: ['tests.twist', 'body.twist-report'],
    },
    {
      fails: 'Rust stays or starts between the layers',
      effect: 'Strength goes where nobody sees it',
      guards: ['body.corrosion', 'body.member-edges'],
    },
    {
      fails: 'A belt anchorage is moved or weakened',
      effect: 'The belt does not hold in a crash',
      guards: ['seating.anchorages-kept'],
    },
  ],
  brakes: [
    {
      fails: 'The rear wheels lock before the front ones',
      effect: 'The car spins when it brakes hard',
      guards: ['brakes.front-first', 'brakes.balance-sheet', 'un.adhesion'],
    },
    {
      fails: 'A line, a hose or a seal lets go',
      effect: 'One circuit is lost, or both',
      guards: [
        'brakes.leak-test',
        'brakes.hose-length',
        'brakes.hose-marking',
        'brakes.line-support',
        'brakes.line-wheel',
        'brakes.secondary-deceleration',
      ],
    },
    {
      fails: 'The pedal reaches the floor before the brakes hold',
      effect: 'There is no braking when it is needed, most of all when hot',
      guards: ['brakes.stroke', 'brakes.pedal-reserve', 'brakes.matching'],
    },
    {
      fails: 'The brakes cannot take the greater speed and mass',
      effect: 'They fade; the stopping distance grows',
      guards: [
        'brakes.service-deceleration',
        'brakes.high-speed',
        'brakes.fade',
        'brakes.engine-output',
        'brakes.disc-thickness',
      ],
    },
    {
      fails: 'The parking brake does not hold',
      effect: 'The parked car rolls away',
      guards: ['brakes.parking', 'brakes.parking-cable'],
    },
    {
      fails: 'A caliper or bracket comes loose',
      effect: 'The brake is lost and the wheel may jam',
      guards: ['brakes.fastener-grade', 'brakes.locking', 'brakes.threads-showing', 'fasteners.torque'],
    },
  ],
  clearance: [
    {
      fails: 'A tyre touches body, spring or line in some position',
      effect: 'The tyre is cut or a brake line worn through',
      guards: ['clearance.tyres', 'clearance.envelope', 'brakes.line-wheel'],
    },
    {
      fails: 'A moving part strikes a fixed one',
      effect: 'Steering or suspension jams',
      guards: ['clearance.members', 'clearance.engine', 'clearance.engine-movement'],
    },
    {
      fails: 'The car grounds',
      effect: 'Sump, tank or lines are torn open; on a flat tyre the car is not held straight',
      guards: ['ground.clearance-axle', 'ground.clearance-middle', 'clearance.flat-tyre'],
    },
  ],
  cooling: [
    {
      fails: 'A hose or joint bursts',
      effect: 'Hot coolant scalds; the screen and the tyres get wet; the engine seizes',
      guards: ['cooling.hoses', 'cooling.tight', 'cooling.test-pressure'],
    },
    {
      fails: 'The engine gets too hot',
      effect: 'It stops in traffic, or is destroyed',
      guards: ['cooling.temperature', 'cooling.thermostat', 'cooling.cap'],
    },
    {
      fails: 'The fan strikes something or somebody',
      effect: 'A blade flies, a hand is hurt',
      guards: ['cooling.fan', 'mounts.gap'],
    },
    {
      fails: 'The panel that carries the radiator is weakened',
      effect: 'The front of the shell holds less in a crash',
      guards: ['cooling.support'],
    },
  ],
  driveline: [
    {
      fails: 'The joints work at unequal or too large angles',
      effect: 'The shaft shakes, the joints wear out and may let go',
      guards: [
        'driveline.angle-speed',
        'driveline.angle-equal',
        'driveline.uniformity',
        'driveline.phasing',
        'driveline.angle-least',
      ],
    },
    {
      fails: 'A joint binds at the end of the travel',
      effect: 'It breaks, or tears the gearbox or the pinion loose',
      guards: ['driveline.angle-largest', 'driveline.free-rotation'],
    },
    {
      fails: 'The shaft turns near its critical speed',
      effect: 'It bows and breaks at speed',
      guards: ['driveline.critical-speed', 'driveline.balance-paper'],
    },
    {
      fails: 'The slip joint runs out or bottoms',
      effect: 'The shaft falls out, or pushes the gearbox apart',
      guards: ['driveline.spline', 'driveline.spline-room'],
    },
    {
      fails: 'The front end of the shaft drops on the road',
      effect: 'It digs in and lifts the car, or strikes tank and lines',
      guards: ['driveline.retainer-drawing', 'fasteners.locking'],
    },
  ],
  electrical: [
    {
      fails: 'A wire chafes or carries too much',
      effect: 'Fire',
      guards: [
        'electrical.fuses',
        'electrical.fuse-wire',
        'electrical.wire-current',
        'electrical.loom-gap',
        'electrical.fuse-distance',
      ],
    },
    {
      fails: 'The battery comes loose',
      effect: 'Short circuit, acid, fire in a crash',
      guards: ['electrical.battery'],
    },
    {
      fails: 'The fuel pump runs on after the engine has stopped',
      effect: 'Fuel feeds a fire',
      guards: ['fuel.pump-stops'],
    },
    {
      fails: 'An airbag circuit was disturbed',
      effect: 'A bag does not fire, or fires in the workshop',
      guards: ['electrical.airbag-circuits', 'retained.fault-lamps'],
    },
  ],
  engine: [
    {
      fails: 'More torque and mass than brakes, driveline and structure were made for',
      effect: 'They wear out or give way; the car stops and steers worse than it was approved to',
      guards: ['engine.capacity', 'engine.brakes', 'engine.strength', 'mass.cg-moved'],
    },
    {
      fails: 'A mount gives way under torque',
      effect: 'The engine shifts; the throttle may be pulled open, lines and steering may be struck',
      guards: ['engine.mounts', 'engine.throttle-return', 'fasteners.appendix'],
    },
    {
      fails: 'A hose, loom or line lies against something hot or moving',
      effect: 'Fire, or loss of the brakes',
      guards: ['engine.lines-protected'],
    },
    {
      fails: 'Emission equipment is missing or does not work',
      effect: 'The car pollutes more than it may',
      guards: ['engine.emission-equipment', 'engine.canister', 'engine.emissions-report'],
    },
  ],
  'engine-assembly': [
    {
      fails: 'A bearing runs dry or a bolt lets go',
      effect: 'The engine seizes or bursts at speed; oil on the road and on the exhaust',
      guards: [
        'assembly.oil-clearance',
        'assembly.oil-pressure',
        'assembly.torques',
        'assembly.once-only',
        'assembly.shells',
      ],
    },
    { fails: 'A closed opening leaks', effect: 'Oil or fuel reaches hot parts', guards: ['assembly.openings'] },
    {
      fails: 'A replaced damper or flywheel does not carry the unbalance of the original',
      effect: 'The crankshaft shakes and breaks',
      guards: ['assembly.unbalance'],
    },
    {
      fails: 'The timing is set by a mark that lies',
      effect: 'Knocking destroys pistons',
      guards: ['assembly.timing-mark', 'assembly.timing-zero'],
    },
  ],
  exhaust: [
    {
      fails: 'Exhaust gas enters the cabin',
      effect: 'Carbon monoxide makes people unconscious before they notice',
      guards: ['exhaust.outlet', 'exhaust.outlet-joint', 'exhaust.leak-test'],
    },
    {
      fails: 'The pipe heats what it passes',
      effect: 'Fire, burst brake hose, melted loom',
      guards: ['exhaust.clear-of-lines', 'exhaust.clearance', 'exhaust.heat', 'fuel.exhaust-distance'],
    },
    {
      fails: 'The car is louder or dirtier than it may be',
      effect: 'It is a nuisance and is put off the road',
      guards: ['tests.noise', 'tests.noise-signature', 'exhaust.catalyst', 'exhaust.sensors'],
    },
  ],
  'fuel-system': [
    {
      fails: 'Fuel leaks from line, joint or tank',
      effect: 'Fire',
      guards: [
        'fuel.tight',
        'fuel.material',
        'fuel.line-pressure',
        'fuel.chafing',
        'fuel.push-on',
        'fuel.line-support',
      ],
    },
    {
      fails: 'The tank is struck or opened in a crash',
      effect: 'Fire with people in the car',
      guards: ['fuel.tank-clearance', 'fuel.tank-place', 'fuel.tank-plate', 'fuel.inside'],
    },
    {
      fails: 'Vapour gathers where it can burn',
      effect: 'Explosion at the first spark',
      guards: ['fuel.vent', 'fuel.inside', 'engine.canister'],
    },
    {
      fails: 'The pump goes on when the engine has stopped',
      effect: 'Fuel feeds a fire',
      guards: ['fuel.pump-stops', 'fuel.pump-ignition'],
    },
  ],
  gearbox: [
    {
      fails: 'The box cannot take the torque',
      effect: 'It breaks, and may lock the driven wheels',
      guards: ['gearbox.torque-rating', 'gearbox.lubricant'],
    },
    {
      fails: 'The cross-member or its bolts give way',
      effect: 'The rear of the engine drops; the shaft runs at another angle',
      guards: ['gearbox.structure', 'fasteners.appendix'],
    },
    {
      fails: 'Bellhousing and crankshaft are not in line',
      effect: 'Shaft, clutch or flexplate break',
      guards: ['gearbox.alignment', 'gearbox.face-alignment', 'gearbox.spigot', 'gearbox.converter'],
    },
    {
      fails: 'The engine starts in gear, or the lever shows another position',
      effect: 'The car leaps forward',
      guards: ['gearbox.neutral-start', 'gearbox.selector-shown'],
    },
    {
      fails: 'The speedometer shows too little',
      effect: 'The driver is faster than he believes',
      guards: ['gearbox.speedometer', 'speedometer.accuracy'],
    },
  ],
  inspection: [
    {
      fails: 'Something was covered before anybody had seen it',
      effect: 'Nobody can say what is under the paint',
      guards: ['inspection.released', 'inspection.shown'],
    },
    {
      fails: "The builder's readings are not what another person reads",
      effect: 'Findings rest on numbers that are wrong',
      guards: ['inspection.readings-agree', 'inspection.who'],
    },
    {
      fails: "A load case or a concession rests on one side's word",
      effect: 'What was reckoned is not what was asked',
      guards: ['inspection.agreement', 'inspection.open-points'],
    },
  ],
  'lights-and-body': [
    {
      fails: 'The bonnet opens on the road',
      effect: 'The driver sees nothing',
      guards: ['lights-and-body.bonnet-latch', 'lights-and-body.bonnet-pins'],
    },
    {
      fails: 'Lamps are hidden, misplaced or point wrongly',
      effect: 'Others do not see the car, or are dazzled',
      guards: [
        'lights-and-body.lamps',
        'lights-and-body.aim',
        'lights-and-body.lamp-height',
        'lights-and-body.lamp-side',
      ],
    },
    {
      fails: 'An edge or a wheel stands out',
      effect: 'A person who is struck is hurt worse; stones fly',
      guards: ['lights-and-body.edge-radius', 'lights-and-body.guard-radius', 'lights-and-body.guard-cover'],
    },
  ],
  mass: [
    {
      fails: 'An axle or tyre carries more than its rating',
      effect: 'Tyre, spring or axle fail; the car stops later',
      guards: ['mass.axle-front', 'mass.axle-rear', 'mass.laden'],
    },
    {
      fails: 'The centre of mass has moved',
      effect: 'The car turns over or spins sooner',
      guards: ['mass.cg-moved', 'tests.lane-change'],
    },
  ],
  mounts: [
    {
      fails: 'A bracket or mount breaks under torque',
      effect: 'The engine lifts or drops; throttle, steering and lines are struck',
      guards: ['mounts.torque-reaction', 'mounts.bracket-stress', 'mounts.retention', 'body.weld-standard'],
    },
    {
      fails: 'The rubber softens in the heat of the exhaust',
      effect: 'The mount lets go after a year',
      guards: ['mounts.heat', 'mounts.hardness'],
    },
    {
      fails: 'The engine moves further than there is room',
      effect: 'It strikes the body or the fan the radiator',
      guards: ['mounts.gap', 'mounts.movement'],
    },
    {
      fails: 'A bolt works loose or pulls its thread',
      effect: 'The mount is lost',
      guards: ['fasteners.engagement', 'fasteners.torque-record', 'fasteners.locking'],
    },
  ],
  'rear-axle': [
    {
      fails: 'A bracket tears off the housing, or the housing cracks beside a weld',
      effect: 'The axle turns under the car',
      guards: ['axle.bracket-load', 'axle.housing-welds', 'axle.brackets-shown'],
    },
    {
      fails: 'The housing was bent by welding',
      effect: 'Bearings and half shafts fail; a wheel may come off',
      guards: ['axle.straight'],
    },
    {
      fails: 'The axle or its shafts are weaker than the torque asks',
      effect: 'A shaft breaks; the wheel it holds is lost where the shaft retains it',
      guards: ['axle.shafts', 'axle.backlash', 'axle.preload', 'axle.pattern-shown'],
    },
    {
      fails: 'The axle stands askew or moves on a wrong path',
      effect: 'The car steers from the rear',
      guards: ['axle.square-difference', 'axle.path'],
    },
    {
      fails: 'The brakes of the other axle do not fit the car',
      effect: 'Balance and hydraulic travel are wrong',
      guards: ['axle.brakes', 'brakes.axle-exchanged'],
    },
  ],
  'retained-systems': [
    {
      fails: 'Antilock or stability control works on wrong signals, or not at all',
      effect: 'Wheels lock, or are braked when they should not be',
      guards: ['retained.antilock', 'brakes.stability-control', 'retained.sensor-gap', 'retained.steering-angle'],
    },
    {
      fails: 'An airbag or tensioner was put out of action',
      effect: 'People are hurt who would not have been',
      guards: ['seating.airbags-kept', 'electrical.airbag-circuits', 'retained.fault-lamps'],
    },
    {
      fails: 'Emission equipment was left off',
      effect: 'The car pollutes more than it may',
      guards: ['engine.emission-equipment', 'engine.canister', 'exhaust.catalyst'],
    },
  ],
  seating: [
    {
      fails: 'A belt or seat anchorage pulls out',
      effect: 'Nobody is held in a crash',
      guards: [
        'seating.anchorage-load',
        'seating.anchorages-kept',
        'seating.backing-plates',
        'seating.belt-geometry',
        'seating.bolts',
      ],
    },
    {
      fails: 'A belt lies wrongly on the body',
      effect: 'It injures instead of holding',
      guards: ['seating.belt-on-seat', 'seating.in-place'],
    },
    {
      fails: 'Airbags or child restraint points no longer suit the seat',
      effect: 'They do not protect, or hurt',
      guards: ['seating.airbags-kept', 'seating.child-points'],
    },
  ],
  steering: [
    {
      fails: 'A shaft slips out, a joint binds or a bolt comes loose',
      effect: 'Steering is lost without warning',
      guards: [
        'steering.shaft-engagement',
        'steering.shaft-angles',
        'steering.lock-to-lock',
        'fasteners.torque',
        'fasteners.locking',
      ],
    },
    {
      fails: 'The column does not give way in a crash',
      effect: 'It is driven into the chest',
      guards: ['steering.collapse', 'steering.collapse-way'],
    },
    {
      fails: 'A heated or welded steering part breaks',
      effect: 'Steering is lost without warning',
      guards: ['links.forged-worked', 'links.weld-report-flaws', 'links.weld-report-procedure', 'steering.assessment'],
    },
    {
      fails: 'Steering moves by itself with the suspension',
      effect: 'The car wanders',
      guards: ['alignment.bump-steer'],
    },
  ],
  suspension: [
    {
      fails: 'A spring comes out of its seat or binds',
      effect: 'The car drops on one corner, or rides on the stop',
      guards: ['suspension.seated', 'suspension.coil-bind', 'suspension.spring-seat', 'suspension.coils-cut'],
    },
    {
      fails: 'The travel runs out',
      effect: 'A damper or mount is torn off; the wheels lose the road',
      guards: ['suspension.bump-travel', 'suspension.rebound-travel', 'suspension.damper-stroke'],
    },
    {
      fails: 'The car stands too high',
      effect: 'It turns over sooner and steers differently',
      guards: ['suspension.lift', 'suspension.height', 'mass.cg-moved'],
    },
    {
      fails: 'The springs are too weak for the load',
      effect: 'The car bottoms; brake balance and headlamps are wrong',
      guards: ['suspension.spring-load', 'suspension.springs-paper'],
    },
  ],
  'suspension-link': [
    {
      fails: 'An adjuster has too few threads in, or works loose',
      effect: 'The link comes apart and the axle turns under the car',
      guards: ['links.engagement', 'links.lock', 'fasteners.locking'],
    },
    {
      fails: 'The links of a pair differ',
      effect: 'The axle stands askew; one side carries more',
      guards: ['links.pair', 'links.pair-alike'],
    },
    {
      fails: 'The tube buckles or the thread tears',
      effect: 'The axle is no longer held',
      guards: ['links.buckling', 'links.tension', 'links.load-case'],
    },
    {
      fails: 'A weld on the link or its bracket cracks',
      effect: 'The axle is no longer held',
      guards: [
        'links.weld-report-procedure',
        'links.weld-report-welder',
        'links.weld-report-flaws',
        'links.mounts',
        'links.forged-worked',
      ],
    },
    {
      fails: 'A rod end held on one side breaks its bolt',
      effect: 'The link drops',
      guards: ['links.rod-end-shear', 'fasteners.torque-record'],
    },
  ],
  test: [
    {
      fails: 'A test was made with the wrong mass, speed, surface or instrument',
      effect: 'A result is believed that says nothing of this car',
      guards: ['tests.conditions', 'tests.instruments', 'brakes.instruments', 'brakes.test-mass', 'brakes.pedal-force'],
    },
    {
      fails: 'A fault first shows on the road and nobody looks',
      effect: 'It grows until it fails in traffic',
      guards: ['tests.road-recheck'],
    },
  ],
  'wheels-tyres': [
    {
      fails: 'The tyre cannot carry the load or the speed',
      effect: 'It bursts',
      guards: ['wheels.load-rating', 'wheels.speed-rating', 'wheels.rim-width', 'wheels.tyre-shown'],
    },
    {
      fails: 'The wheel is held by too little thread or by a spacer that may not be there',
      effect: 'The wheel comes off',
      guards: ['wheels.nut-engagement', 'wheels.spacers'],
    },
    {
      fails: 'The tyre touches guard, spring or brake',
      effect: 'It is cut, or the steering jams',
      guards: ['wheels.guards', 'clearance.tyres'],
    },
    {
      fails: 'Another diameter changes brakes, speedometer and clearance',
      effect: 'The car stops later and is faster than it shows',
      guards: ['wheels.diameter', 'wheels.diameter-step', 'speedometer.kept'],
    },
    {
      fails: 'A wider track or offset loads hubs and steering',
      effect: 'Bearings fail; the steering pulls',
      guards: ['wheels.track', 'wheels.axle-offset', 'wheels.construction'],
    },
  ],
};
