/** What a reader of power figures must know of how they come about. Errors: see tests/published/propeller*.test.ts. */
export const powerNotes = {
  propeller:
    "Blade elements and momentum on the mean measured blade of its type and size, or on its own stations. Against tunnel tests of " +
    "eleven propellers standing still the error was 5 % in thrust and 7 % in power on average, 20 % at worst. Not modelled: " +
    "compressibility, twist under load, the body before or behind it. Reynolds effects stop at the fastest measured.",
  propellerInFlight:
    "In flight the same eleven were off by 0.04 in the advance ratio without thrust and by 3 points in best efficiency on average, by " +
    "0.11 and 7 at worst.",
  motor:
    "First-order motor (Drela 2007): winding resistance and a constant no-load current. It does not grow warm. A gear loses nothing.",
  controller:
    "A resistance. Its switching losses are not modelled; without figures of its own 0.4 V at its rated current and 4 mohm of leads " +
    "(common practice, no source).",
  battery:
    "A voltage behind a resistance, new and at room temperature; cold or worn packs have twice the resistance. A resistance not " +
    "written comes from chemistry and capacity (common practice, no source).",
} as const;
