/** Where a part may stand: in the file, in an assembly, in the placing of one, or changed in a loading. */
export const anywhere = ["file", "assembly", "place", "loading"] as const;

/** Where things stand that only names and numbers of parts lean on. */
export const topmost = ["file", "assembly"] as const;

export const surfaceKinds = ["wing", "tailplane", "canard", "fin"] as const;

export const bodyKinds = ["fuselage", "body", "boom"] as const;
