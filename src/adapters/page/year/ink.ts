/** The few inks of the page. They differ in lightness, so that grey print keeps them apart, and never say anything that shape or words do not. */
export const INK = {
  ink: '#1f2428',
  soft: '#50575e',
  accent: '#1d4e6f',
  band: '#aabdcb',
  wash: '#e9eef2',
  grid: '#dfe3e6',
  paper: '#ffffff',
} as const;
