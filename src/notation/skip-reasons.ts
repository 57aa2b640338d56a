/** The reasons for a skipped session that the notation knows; any other word is as good. */
export const skipReasons = ['sore', 'tired', 'ill', 'injured', 'work', 'travel', 'other'] as const;
