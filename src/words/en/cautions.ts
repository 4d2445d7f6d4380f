// English words of the cautions on the plan card, and the words of a plan that call for each.

export const cautionWords = {
  preface: 'Chosen from what this plan mentions; they are reminders and not complete. The rules of your country, your landlord and the makers of your equipment go before them.',
  cautions: {
    mains: {
      title: 'Mains electricity beside water',
      text: 'Run every plug through a residual-current device of 30 mA or less and test it, hang each cable in a drip loop below its socket, and unplug before hands go into the water.',
    },
    gas: {
      title: 'Pressurised gas',
      text: 'Chain the cylinder upright, check the regulator and every joint with soapy water, and air the room: carbon dioxide gathers low and gives no warning.',
    },
    chemicals: {
      title: 'Chemicals and reagents',
      text: 'Read the safety data sheet first, wear gloves and goggles, label every bottle, keep reagents out of the tanks, and collect used ones as your local rules ask.',
    },
    animals: {
      title: 'Live animals',
      text: 'Look at the animals at every reading, end the run as soon as a stop rule or their behaviour asks for it, and call a veterinarian when they look unwell. Experiments with vertebrates, cephalopods and decapod crustaceans can need a licence: find out before you start.',
    },
    release: {
      title: 'Nothing goes into open water',
      text: 'Never pour plants, animals or tank water into ditches, ponds or drains that lead there. Some floating plants may not be kept or passed on in some countries.',
    },
    night: {
      title: 'Working at night, alone',
      text: 'Keep the floor dry and the way lit, tell somebody, and leave a reading out rather than take a risk: a missing reading is written “-” and does no harm.',
    },
    light: {
      title: 'Ultraviolet and strong lamps',
      text: 'Switch ultraviolet lamps off before opening their housing, and do not look into strong lamps.',
    },
    heat: {
      title: 'Heaters',
      text: 'Switch a heater off a quarter of an hour before it leaves the water, and do not rely on one thermostat alone to keep animals safe.',
    },
    glass: {
      title: 'Weight',
      text: 'A litre of water weighs a kilogram: check the stand and the floor, and never move a filled tank.',
    },
  },
  finds: {
    mains: /\b(?:heaters?|heating|pumps?|lamps?|leds?|lights?|filters?|chillers?|mains|skimmers?|powerheads?|stirrers?|fans?|thermostats?|sockets?)\b/u,
    gas: /\b(?:co2|carbon dioxide|cylinders?|regulators?|pressuri[sz]ed|compressed|nitrogen gas|oxygen gas|bottled gas|solenoid)\b/u,
    chemicals: /\b(?:reagents?|titrat\w*|test kits?|drop tests?|acids?|hydrochloric|sulph?uric|bleach|chlorine|hypochlorite|permanganate|peroxide|ammonium|ammonia chloride|formalin|copper|medication|dos(?:e|ed|ing)|winkler|sodium \w+|calcium chloride)\b/u,
    light: /\b(?:uv|ultraviolet|metal halide|laser)\b/u,
    heat: /\bheaters?\b/u,
    /** Instruments that want calibrating before the run. */
    probe: /\b(?:meter|probe|electrode|sensor|refractometer)\b/iu,
  },
};

export type CautionWords = typeof cautionWords;
