// A browser that is there and cannot be driven: its tests are left out, and that is said.
export class TooOld extends Error {}
