/** A cost that stands for "there is no way". Sums of a few of these stay exact, and larger than any cost. */
export const NO_WAY = 67_108_864;
