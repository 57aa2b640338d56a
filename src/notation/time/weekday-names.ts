/** The weekdays as the notation and the command line name them, Monday first. */
export const weekdayNames: readonly string[] = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
];
