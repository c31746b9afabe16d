/** The digits of a NACA section written some other way than `naca("2412")`: `2412`, `NACA 2412`, `naca_2412`. */
export const sectionDigits = (text: string): string | undefined => /^(?:naca[ _-]*)?(\d{4,5})$/i.exec(text)?.[1];
