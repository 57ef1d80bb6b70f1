// What a document of the door is made of: TOML as JSON (docs/formats/door.md).
export type DoorValue = string | number | boolean | DoorValue[] | DoorTable;
export interface DoorTable {
  [key: string]: DoorValue;
}
