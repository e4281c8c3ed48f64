/** What the lab uses of a package that brings no types. */
declare module 'fs-native-extensions' {
  const native: {
    /** Takes the system's lock on an open file; false where another process has it. */
    tryLock(file: number): boolean;
    unlock(file: number): void;
  };
  export default native;
}
