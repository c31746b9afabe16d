/** Where a value must lie, in SI, and how to say so: "`span` must be more than 0". */
export interface Range {
  readonly holds: (value: number) => boolean;
  readonly message: string;
}

export const positive: Range = { holds: (x) => x > 0, message: "must be more than 0" };

export const notNegative: Range = { holds: (x) => x >= 0, message: "can't be negative" };

/** A share of a whole. A hair over 1 is rounding, 1e-9: eight decimals of a per cent. */
export const share: Range = { holds: (x) => x >= 0 && x <= 1 + 1e-9, message: "must lie between 0 % and 100 %" };

export const positiveShare: Range = {
  holds: (x) => x > 0 && x <= 1 + 1e-9,
  message: "must be more than 0 % and at most 100 %",
};

/** An angle at most so many degrees to either side. The slack, 1e-9 rad, lets the limit itself pass. */
export const withinDegrees = (most: number): Range => ({
  holds: (x) => Math.abs(x) <= (most * Math.PI) / 180 + 1e-9,
  message: `must lie between -${most} deg and ${most} deg`,
});

/** From 0 to so many degrees: a throw is written as its size, its name says which way. */
export const upToDegrees = (most: number): Range => ({
  holds: (x) => x >= 0 && x <= (most * Math.PI) / 180 + 1e-9,
  message: `must lie between 0 deg and ${most} deg; its name says which way`,
});

/** A temperature in kelvins that a workshop or a flying field can have, written in degrees Celsius. */
export const celsius = (least: number, most: number): Range => ({
  holds: (x) => x >= least + 273.15 && x <= most + 273.15,
  message: `must lie between ${least} degC and ${most} degC`,
});

export const atLeast = (least: number): Range => ({ holds: (x) => x >= least, message: `must be ${least} or more` });

/** An altitude in metres within the lowest layer of the standard atmosphere. */
export const altitude: Range = { holds: (x) => x >= -500 && x <= 11000, message: "must lie between -500 m and 11 km" };
