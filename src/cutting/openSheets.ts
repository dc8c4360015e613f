import type { Axis } from '../measure/index.ts';
import type { Chance } from './chance.ts';
import type { CutTree } from './cutTree.ts';
import { cuttableFrom, measurable } from './measuring.ts';
import type { CutLimits, CuttingTask } from './task.ts';

/** Where a piece goes: which room, which way round, and along which axis it is cut off first. */
export interface Place {
  room: number;
  turned: boolean;
  first: 0 | 1;
}

/**
 * Sheets that are being filled: a cut tree for each, with rooms where nothing has been placed yet.
 *
 * Pieces are put into rooms and whole branches taken out again; what is free side by side in one row becomes one
 * room, since the parts of a row may stand in any order. Everything since the last `keep` can be undone. All of the
 * state is one array of numbers, so that undoing, saving and bringing back are copies of numbers. Node 0 and up;
 * axes are 0 for width, 1 for height. Every cut keeps the limits of the task.
 */
export class OpenSheets {
  private cells: Float64Array;
  private loggedAt = new Int32Array(1024);
  private loggedValue = new Float64Array(1024);
  private logged = 0;
  private readonly roots: readonly number[];
  private readonly base: number;
  private readonly limits: CutLimits;
  private readonly longest: number;
  /** Whether the trimmer can make any cut. */
  private readonly anyCut: boolean;
  /** Rooms smaller than this hold nothing. */
  private readonly narrowest: number;
  private readonly lowest: number;
  /** Largest sheet's area: areas are counted in it. */
  private readonly unit: number;

  constructor(
    private readonly task: CuttingTask,
    /** By open sheet, its kind. */
    readonly kinds: readonly number[],
    /** By item, what it weighs to leave one out. */
    private readonly weights: readonly number[],
    wanted: readonly number[],
  ) {
    const { items, sheets, limits } = task;
    this.limits = limits;
    this.longest = limits.longest ?? Number.POSITIVE_INFINITY;
    this.anyCut = limits.step === null && limits.longest === null && limits.reach === null;
    this.narrowest = Math.min(...items.map((i) => (i.turns ? Math.min(i.width, i.height) : i.width)));
    this.lowest = Math.min(...items.map((i) => (i.turns ? Math.min(i.width, i.height) : i.height)));
    this.unit = Math.max(...kinds.map((kind) => sheets[kind]!.width * sheets[kind]!.height));
    this.base = outStart + items.length;
    const capacity = 64 + 8 * kinds.length;
    this.cells = new Float64Array(this.base + capacity * stride);
    for (let node = 0; node < capacity; node++) this.cells[this.at(node) + spare] = capacity - 1 - node;
    this.cells[spareCount] = capacity;
    wanted.forEach((count, item) => {
      this.cells[outStart + item] = count;
      this.cells[outWeight]! += count * weights[item]!;
    });
    this.roots = kinds.map((kind) => {
      const node = this.taken(isRoom, sheets[kind]!.width, sheets[kind]!.height);
      this.listRoom(node);
      return node;
    });
    this.keep();
  }

  /** How many of an item are not placed. */
  out(item: number): number {
    return this.cells[outStart + item]!;
  }

  /** The weight of all that is not placed. */
  get weightOut(): number {
    return this.cells[outWeight]!;
  }

  /** Sum over rooms of the square of their area, in squares of the largest sheet's. */
  get roominess(): number {
    return this.cells[squares]!;
  }

  get pieces(): number {
    return this.cells[pieceCount]!;
  }

  get rooms(): number {
    return this.cells[roomCount]!;
  }

  /** Node of the piece with this number, from 0 to `pieces` - 1. */
  piece(number: number): number {
    return this.cells[this.at(number) + pieceAt]!;
  }

  /** Node of the room with this number, from 0 to `rooms` - 1. */
  room(number: number): number {
    return this.cells[this.at(number) + roomAt]!;
  }

  /** The node that this one is a part of; -1: it is a whole sheet. */
  parent(node: number): number {
    return this.cells[this.at(node) + parentOf]!;
  }

  /** How many pieces are in a branch, counted up to `most`. */
  piecesIn(node: number, most: number): number {
    const kind = this.cells[this.at(node) + kindOf]!;
    if (kind === isPiece) return 1;
    let count = 0;
    if (kind >= isRow) {
      for (let part = this.firstPart(node); part >= 0 && count < most; part = this.nextPart(part))
        count += this.piecesIn(part, most - count);
    }
    return count;
  }

  /** The parts of a row other than rooms. */
  filledParts(row: number): number[] {
    const parts: number[] = [];
    if (this.cells[this.at(row) + kindOf]! < isRow) return parts;
    for (let part = this.firstPart(row); part >= 0; part = this.nextPart(part))
      if (this.cells[this.at(part) + kindOf] !== isRoom) parts.push(part);
    return parts;
  }

  /** Forgets how to undo. */
  keep(): void {
    this.logged = 0;
  }

  /** Back to how it was at the last `keep`. */
  undo(): void {
    const { cells, loggedAt, loggedValue } = this;
    for (let entry = this.logged - 1; entry >= 0; entry--) cells[loggedAt[entry]!] = loggedValue[entry]!;
    this.logged = 0;
  }

  /** The whole state, for `restore`. */
  saved(): Float64Array {
    return this.cells.slice();
  }

  restore(state: Float64Array): void {
    this.cells = state.slice();
    this.keep();
  }

  /**
   * Writes the best place for an item into `place`, or says that there is none: the one that leaves the rooms
   * largest (`roominess`), each room being overlooked with a small chance.
   */
  findPlace(item: number, place: Place, overlooked: number, chance: Chance): boolean {
    const { cells, unit } = this;
    const { width, height, turns } = this.task.items[item]!;
    const count = cells[roomCount]!;
    let best = Number.NEGATIVE_INFINITY;
    for (let way = 0; way < (turns && width !== height ? 2 : 1); way++) {
      const w = way === 0 ? width : height;
      const h = way === 0 ? height : width;
      for (let number = 0; number < count; number++) {
        const room = cells[this.at(number) + roomAt]!;
        const cell = this.at(room);
        const roomWidth = cells[cell]!;
        const roomHeight = cells[cell + 1]!;
        if (w > roomWidth || h > roomHeight) continue;
        const beside = roomWidth - w;
        const above = roomHeight - h;
        if (overlooked > 0 && chance.fraction() < overlooked) continue;
        const before = (roomWidth * roomHeight) / unit;
        // Along the width first: what is beside is as high as the room.
        for (let first = 0; first < 2; first++) {
          if (first === 0 ? beside === 0 && above > 0 : above === 0) continue;
          if (!this.anyCut && !this.allows(room, first, w, h)) continue;
          const besideArea = this.useful(beside, first === 0 ? roomHeight : h);
          const aboveArea = this.useful(first === 0 ? w : roomWidth, above);
          const score = besideArea * besideArea + aboveArea * aboveArea - before * before;
          if (score > best) {
            best = score;
            place.room = room;
            place.turned = way === 1;
            place.first = first as 0 | 1;
          }
        }
      }
    }
    return best > Number.NEGATIVE_INFINITY;
  }

  /** Puts an item, which must be out, into a place that `findPlace` gave. */
  insert(item: number, { room, turned, first }: Place): void {
    const { width, height } = this.task.items[item]!;
    const size = turned ? [height, width] : [width, height];
    let at = room;
    for (const axis of first === 0 ? [0, 1] : [1, 0]) {
      if (this.cells[this.at(at) + axis]! > size[axis]!) at = this.cutOff(at, axis, size[axis]!);
    }
    this.unlistRoom(at);
    this.put(this.at(at) + kindOf, isPiece);
    this.put(this.at(at) + shapeOf, 2 * item + (turned ? 1 : 0));
    this.listPiece(at);
    this.put(outStart + item, this.cells[outStart + item]! - 1);
    this.put(outWeight, this.cells[outWeight]! - this.weights[item]!);
  }

  /**
   * Takes everything out of a branch. What becomes free with it: the room that is left, or the room or row that it
   * is now a part of.
   */
  remove(node: number): void {
    this.emptied(node);
    let free = node;
    for (;;) {
      const row = this.parent(free);
      if (row < 0) break;
      // Free side by side becomes one.
      for (let part = this.firstPart(row); part >= 0; part = this.nextPart(part)) {
        if (part === free || this.cells[this.at(part) + kindOf] !== isRoom) continue;
        const axis = this.axisOf(row);
        this.unlistRoom(part);
        this.put(this.at(free) + axis, this.cells[this.at(free) + axis]! + this.cells[this.at(part) + axis]!);
        this.unlink(part);
        this.givenBack(part);
        break;
      }
      if (this.nextPart(this.firstPart(row)) >= 0) break;
      this.unlink(free);
      this.givenBack(free);
      this.put(this.at(row) + kindOf, isRoom);
      free = row;
    }
    this.listRoom(free);
  }

  /**
   * Where every part of a row has a room at its end, the least of these rooms is taken off them all at one go and
   * goes to what the row is a part of. `false`: there was nothing to take off.
   */
  drawIn(row: number): boolean {
    if (row < 0 || this.cells[this.at(row) + kindOf]! < isRow) return false;
    // Parts of two rows may become parts of one, in which both have one that is out of reach.
    if (this.limits.reach !== null) return false;
    const axis = this.axisOf(row);
    const across = 1 - axis;
    let least = Number.POSITIVE_INFINITY;
    for (let part = this.firstPart(row); part >= 0; part = this.nextPart(part)) {
      const kind = this.cells[this.at(part) + kindOf]!;
      if (kind === isRoom) continue;
      const end = kind === isPiece ? -1 : this.roomOf(part);
      if (end < 0) return false;
      least = Math.min(least, this.cells[this.at(end) + across]!);
    }
    if (this.limits.step !== null) least -= least % this.limits.step;
    if (least <= 0 || least === Number.POSITIVE_INFINITY) return false;
    const above = this.parent(row);
    if (above < 0 && this.cells[this.at(row) + axis]! > this.longest) return false;

    let part = this.firstPart(row);
    while (part >= 0) {
      const following = this.nextPart(part);
      this.put(this.at(part) + across, this.cells[this.at(part) + across]! - least);
      if (this.cells[this.at(part) + kindOf] === isRoom) {
        this.relistRoom(part);
      } else {
        const end = this.roomOf(part);
        const left = this.cells[this.at(end) + across]! - least;
        if (left > 0) {
          this.put(this.at(end) + across, left);
          this.relistRoom(end);
        } else {
          this.unlistRoom(end);
          this.unlink(end);
          this.givenBack(end);
          const only = this.firstPart(part);
          if (this.nextPart(only) < 0) this.replaceByPart(row, part, only);
        }
      }
      part = following;
    }
    this.put(this.at(row) + across, this.cells[this.at(row) + across]! - least);
    if (above >= 0) {
      const known = this.roomOf(above);
      if (known >= 0) {
        this.put(this.at(known) + across, this.cells[this.at(known) + across]! + least);
        this.relistRoom(known);
      } else {
        const room = this.taken(isRoom, ...this.sized(row, across, least));
        this.link(room, above);
        this.listRoom(room);
      }
      return true;
    }
    // The sheet's own row: its node becomes the row across, since it stays the root.
    const inner = this.taken(
      this.cells[this.at(row) + kindOf]!,
      this.cells[this.at(row)]!,
      this.cells[this.at(row) + 1]!,
    );
    while (this.firstPart(row) >= 0) {
      const moved = this.firstPart(row);
      this.unlink(moved);
      this.link(moved, inner);
    }
    this.put(this.at(row) + across, this.cells[this.at(row) + across]! + least);
    this.put(this.at(row) + kindOf, isRow + across);
    this.link(inner, row);
    const room = this.taken(isRoom, ...this.sized(inner, across, least));
    this.link(room, row);
    this.listRoom(room);
    return true;
  }

  /** How an open sheet is cut, the parts in any order: still to be `tidied`. */
  tree(sheet: number): CutTree {
    const of = (node: number): CutTree => {
      const cell = this.at(node);
      const width = this.cells[cell]!;
      const height = this.cells[cell + 1]!;
      const kind = this.cells[cell + kindOf]!;
      if (kind === isRoom) return { kind: 'rest', width, height };
      if (kind === isPiece) {
        const shape = this.cells[cell + shapeOf]!;
        return { kind: 'piece', width, height, item: shape >> 1, turned: shape % 2 === 1 };
      }
      const axis: Axis = this.axisOf(node) === 0 ? 'width' : 'height';
      const parts: CutTree[] = [];
      for (let part = this.firstPart(node); part >= 0; part = this.nextPart(part)) parts.push(of(part));
      return { kind: 'cut', width, height, axis, parts };
    };
    return of(this.roots[sheet]!);
  }

  /** How many of each item are in an open sheet. */
  made(sheet: number): number[] {
    const made = this.task.items.map(() => 0);
    const count = (node: number): void => {
      const kind = this.cells[this.at(node) + kindOf]!;
      if (kind === isPiece) made[this.cells[this.at(node) + shapeOf]! >> 1]!++;
      if (kind < isRow) return;
      for (let part = this.firstPart(node); part >= 0; part = this.nextPart(part)) count(part);
    };
    count(this.roots[sheet]!);
    return made;
  }

  private at(node: number): number {
    return this.base + node * stride;
  }

  private axisOf(row: number): number {
    return this.cells[this.at(row) + kindOf]! - isRow;
  }

  private firstPart(row: number): number {
    return this.cells[this.at(row) + firstOf]!;
  }

  private nextPart(part: number): number {
    return this.cells[this.at(part) + nextOf]!;
  }

  /** The room in a row; -1: none. */
  private roomOf(row: number): number {
    for (let part = this.firstPart(row); part >= 0; part = this.nextPart(part))
      if (this.cells[this.at(part) + kindOf] === isRoom) return part;
    return -1;
  }

  private put(index: number, value: number): void {
    if (this.logged === this.loggedAt.length) {
      const at = new Int32Array(2 * this.logged);
      const values = new Float64Array(2 * this.logged);
      at.set(this.loggedAt);
      values.set(this.loggedValue);
      this.loggedAt = at;
      this.loggedValue = values;
    }
    this.loggedAt[this.logged] = index;
    this.loggedValue[this.logged] = this.cells[index]!;
    this.logged++;
    this.cells[index] = value;
  }

  /** The size of a node with another length along one axis. */
  private sized(node: number, axis: number, length: number): [width: number, height: number] {
    const cell = this.at(node);
    return axis === 0 ? [length, this.cells[cell + 1]!] : [this.cells[cell]!, length];
  }

  /** Area that can hold something, in areas of the largest sheet; else 0. */
  private useful(width: number, height: number): number {
    return width >= this.narrowest && height >= this.lowest ? (width * height) / this.unit : 0;
  }

  /** Whether the trimmer can cut a piece of w x h out of a room, along this axis first. */
  private allows(room: number, first: number, w: number, h: number): boolean {
    const { longest, limits } = this;
    const cell = this.at(room);
    const roomWidth = this.cells[cell]!;
    const roomHeight = this.cells[cell + 1]!;
    if (w < roomWidth && (first === 0 ? roomHeight : h) > longest) return false;
    if (h < roomHeight && (first === 0 ? w : roomWidth) > longest) return false;
    if (limits.step === null && limits.reach === null) return true;

    // A row of its own where the cut is no cut of the row that the room is in.
    const row = this.parent(room);
    const axis = row < 0 ? -1 : this.axisOf(row);
    if ((first !== 0 || axis !== 0) && !cuttableFrom(w, roomWidth, limits)) return false;
    if ((first !== 1 || axis !== 1) && !cuttableFrom(h, roomHeight, limits)) return false;
    if (axis < 0) return true;
    // In that row there is now a part more; only one, the last, may be such that it cannot be measured off.
    const whole = this.cells[cell + axis]!;
    const part = first === axis ? (axis === 0 ? w : h) : whole;
    if (measurable(part, limits)) return true;
    if (!cuttableFrom(part, whole, limits)) return false;
    for (let other = this.firstPart(row); other >= 0; other = this.nextPart(other)) {
      if (this.cells[this.at(other) + kindOf] === isRoom) continue;
      if (!measurable(this.cells[this.at(other) + axis]!, limits)) return false;
    }
    return true;
  }

  /** Cuts a length off a room, which keeps what is over; the part cut off, a room of its own not yet listed. */
  private cutOff(room: number, axis: number, length: number): number {
    const cell = this.at(room);
    const row = this.parent(room);
    const over = this.cells[cell + axis]! - length;
    this.unlistRoom(room);
    const [w, h] = this.sized(room, axis, length);
    if (row >= 0 && this.axisOf(row) === axis) {
      this.put(cell + axis, over);
      this.listRoom(room);
      const part = this.taken(isRoom, w, h);
      this.link(part, row);
      return part;
    }
    const rest = this.taken(isRoom, ...this.sized(room, axis, over));
    const part = this.taken(isRoom, w, h);
    this.put(cell + kindOf, isRow + axis);
    this.put(cell + firstOf, -1);
    this.link(rest, room);
    this.link(part, room);
    this.listRoom(rest);
    return part;
  }

  /** Gives back all below a node and makes it a room, not yet listed. */
  private emptied(node: number): void {
    const cell = this.at(node);
    const kind = this.cells[cell + kindOf]!;
    if (kind === isPiece) {
      const item = this.cells[cell + shapeOf]! >> 1;
      this.unlistPiece(node);
      this.put(outStart + item, this.cells[outStart + item]! + 1);
      this.put(outWeight, this.cells[outWeight]! + this.weights[item]!);
    } else if (kind === isRoom) {
      this.unlistRoom(node);
    } else {
      for (let part = this.firstPart(node); part >= 0; ) {
        const following = this.nextPart(part);
        this.emptied(part);
        this.givenBack(part);
        part = following;
      }
      this.put(cell + firstOf, -1);
    }
    this.put(cell + kindOf, isRoom);
  }

  /** In a row, one part, which is down to one part of its own, gives way to that one. */
  private replaceByPart(row: number, part: number, only: number): void {
    this.unlink(only);
    this.unlink(part);
    this.givenBack(part);
    if (this.cells[this.at(only) + kindOf]! < isRow) {
      this.link(only, row);
      return;
    }
    // A row along the same axis: its parts become parts of the outer one, its room one with the outer room.
    const room = this.roomOf(row);
    while (this.firstPart(only) >= 0) {
      const moved = this.firstPart(only);
      this.unlink(moved);
      if (this.cells[this.at(moved) + kindOf] !== isRoom || room < 0) {
        this.link(moved, row);
        continue;
      }
      const axis = this.axisOf(row);
      this.unlistRoom(moved);
      this.put(this.at(room) + axis, this.cells[this.at(room) + axis]! + this.cells[this.at(moved) + axis]!);
      this.relistRoom(room);
      this.givenBack(moved);
    }
    this.givenBack(only);
  }

  private link(part: number, row: number): void {
    const first = this.firstPart(row);
    this.put(this.at(part) + parentOf, row);
    this.put(this.at(part) + prevOf, -1);
    this.put(this.at(part) + nextOf, first);
    if (first >= 0) this.put(this.at(first) + prevOf, part);
    this.put(this.at(row) + firstOf, part);
  }

  private unlink(part: number): void {
    const cell = this.at(part);
    const before = this.cells[cell + prevOf]!;
    const after = this.cells[cell + nextOf]!;
    if (before >= 0) this.put(this.at(before) + nextOf, after);
    else this.put(this.at(this.cells[cell + parentOf]!) + firstOf, after);
    if (after >= 0) this.put(this.at(after) + prevOf, before);
  }

  private listRoom(node: number): void {
    const cell = this.at(node);
    const area = this.useful(this.cells[cell]!, this.cells[cell + 1]!);
    if (area === 0) {
      this.put(cell + placeOf, -1);
      return;
    }
    const number = this.cells[roomCount]!;
    this.put(this.at(number) + roomAt, node);
    this.put(cell + placeOf, number);
    this.put(cell + areaOf, area);
    this.put(roomCount, number + 1);
    this.put(squares, this.cells[squares]! + area * area);
  }

  private unlistRoom(node: number): void {
    const cell = this.at(node);
    const number = this.cells[cell + placeOf]!;
    if (number < 0) return;
    const area = this.cells[cell + areaOf]!;
    const last = this.cells[roomCount]! - 1;
    const moved = this.cells[this.at(last) + roomAt]!;
    this.put(this.at(number) + roomAt, moved);
    this.put(this.at(moved) + placeOf, number);
    this.put(cell + placeOf, -1);
    this.put(roomCount, last);
    this.put(squares, this.cells[squares]! - area * area);
  }

  private relistRoom(node: number): void {
    this.unlistRoom(node);
    this.listRoom(node);
  }

  private listPiece(node: number): void {
    const number = this.cells[pieceCount]!;
    this.put(this.at(number) + pieceAt, node);
    this.put(this.at(node) + placeOf, number);
    this.put(pieceCount, number + 1);
  }

  private unlistPiece(node: number): void {
    const number = this.cells[this.at(node) + placeOf]!;
    const last = this.cells[pieceCount]! - 1;
    const moved = this.cells[this.at(last) + pieceAt]!;
    this.put(this.at(number) + pieceAt, moved);
    this.put(this.at(moved) + placeOf, number);
    this.put(this.at(node) + placeOf, -1);
    this.put(pieceCount, last);
  }

  /** A node that was not in use, part of nothing. */
  private taken(kind: number, width: number, height: number): number {
    if (this.cells[spareCount] === 0) this.grow();
    const left = this.cells[spareCount]! - 1;
    const node = this.cells[this.at(left) + spare]!;
    this.put(spareCount, left);
    const cell = this.at(node);
    this.put(cell, width);
    this.put(cell + 1, height);
    this.put(cell + kindOf, kind);
    this.put(cell + parentOf, -1);
    this.put(cell + firstOf, -1);
    this.put(cell + nextOf, -1);
    this.put(cell + prevOf, -1);
    this.put(cell + placeOf, -1);
    return node;
  }

  private givenBack(node: number): void {
    const count = this.cells[spareCount]!;
    this.put(this.at(count) + spare, node);
    this.put(spareCount, count + 1);
  }

  /** Makes room for as many nodes again. The list of spare ones moves up, in the log too, the new ones go below. */
  private grow(): void {
    const before = (this.cells.length - this.base) / stride;
    const grown = new Float64Array(this.base + 2 * before * stride);
    grown.set(this.cells);
    this.cells = grown;
    for (let node = 0; node < before; node++) {
      const cell = this.at(node) + spare;
      grown[cell + before * stride] = grown[cell]!;
      grown[cell] = 2 * before - 1 - node;
    }
    grown[spareCount]! += before;
    for (let entry = 0; entry < this.logged; entry++) {
      const index = this.loggedAt[entry]!;
      if (index === spareCount) this.loggedValue[entry]! += before;
      else if (index >= this.base && (index - this.base) % stride === spare)
        this.loggedAt[entry] = index + before * stride;
    }
  }
}

// The head of the array: counts and sums; then by item how many are out; then the nodes.
const roomCount = 0;
const pieceCount = 1;
const spareCount = 2;
const outWeight = 3;
const squares = 4;
const outStart = 5;

// The cells of a node: its size, what it is, its place in the tree; the last three hold lists by number, of all
// rooms, of all pieces, and of nodes not in use.
const kindOf = 2;
const shapeOf = 3;
const parentOf = 4;
const firstOf = 5;
const nextOf = 6;
const prevOf = 7;
const placeOf = 8;
const areaOf = 9;
const roomAt = 10;
const pieceAt = 11;
const spare = 12;
const stride = 13;

// What a node is; a row along axis a is `isRow + a`.
const isRoom = 1;
const isPiece = 2;
const isRow = 3;
