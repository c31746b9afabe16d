import type { Quantity } from "../../grammar/units/quantity";
import type { FigureEntry } from "../../shared/catalogue";

/** An input of a figure with its value, as the account prints it. */
export interface Input {
  readonly name: string;
  readonly value: Quantity | string;
}

/** What a figure says of itself: formula in words, inputs with their values, published source, and what is left out. */
export interface Account {
  readonly formula: string;
  readonly inputs: readonly Input[];
  readonly source: string;
  readonly notModelled?: string;
}

export interface Figure {
  readonly name: string;
  readonly entry: FigureEntry;
  readonly quantity: Quantity;
  readonly account: Account;
}

/** Why a figure that somebody asks for isn't there. */
export interface Absence {
  readonly name: string;
  readonly reason: string;
}
