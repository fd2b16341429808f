/** The part of open-location-code 1.0.3 that is used; the package brings no types. Its encoding errs at cell edges. */
declare module 'open-location-code' {
  interface OpenLocationCode {
    isFull(code: string): boolean;
    isValid(code: string): boolean;
    decode(code: string): { latitudeLo: number; longitudeLo: number; latitudeHi: number; longitudeHi: number };
  }
  const exported: { OpenLocationCode: new () => OpenLocationCode };
  export default exported;
}
