/** What an activity is charged by, in the words of a drilling contract [common practice]. */
export const CHARGE_CLASSES = ['metres', 'active hourly', 'standby hourly', 'no charge', 'lump sum'] as const;
export type ChargeClass = (typeof CHARGE_CLASSES)[number];

/** Shifts of a day by name. */
export const SHIFT_NAMES = ['day', 'night'] as const;
export type ShiftName = (typeof SHIFT_NAMES)[number];
