/* eslint-disable @typescript-eslint/no-extraneous-class -- classes of which only the constructor is used */
/** The little of three that we use; the package ships no types. */
declare module 'three' {
  export class Vector2 {
    constructor(x: number, y: number);
    x: number;
    y: number;
  }
  export class Vector3 {
    set(x: number, y: number, z: number): this;
  }
  export class Color {
    constructor(css: string);
  }
  export class Object3D {
    position: Vector3;
    up: Vector3;
    visible: boolean;
    add(...others: Object3D[]): this;
    lookAt(x: number, y: number, z: number): void;
  }
  export class Scene extends Object3D {}
  export class Group extends Object3D {}
  export class OrthographicCamera extends Object3D {
    constructor(
      left: number,
      right: number,
      top: number,
      bottom: number,
      near: number,
      far: number,
    );
    left: number;
    right: number;
    top: number;
    bottom: number;
    updateProjectionMatrix(): void;
  }
  export class BufferGeometry {
    setAttribute(name: 'position', values: Float32BufferAttribute): this;
    computeVertexNormals(): void;
  }
  export class EdgesGeometry extends BufferGeometry {
    constructor(of: BufferGeometry, thresholdDeg: number);
  }
  export class Float32BufferAttribute {
    constructor(values: readonly number[], size: number);
  }
  export class Material {}
  export class MeshLambertMaterial extends Material {
    constructor(look: {
      color: Color;
      side: number;
      polygonOffset: boolean;
      polygonOffsetFactor: number;
      polygonOffsetUnits: number;
    });
  }
  export class LineBasicMaterial extends Material {
    constructor(look: { color: Color });
  }
  export const DoubleSide: number;
  export class Mesh extends Object3D {
    constructor(geometry: BufferGeometry, material: Material);
  }
  export class LineSegments extends Object3D {
    constructor(geometry: BufferGeometry, material: Material);
  }
  export class HemisphereLight extends Object3D {
    constructor(sky: Color, ground: Color, intensity: number);
  }
  export class DirectionalLight extends Object3D {
    constructor(color: Color, intensity: number);
  }
  export const ShapeUtils: {
    triangulateShape(outer: Vector2[], holes: Vector2[][]): [number, number, number][];
  };
  export class WebGLRenderer {
    constructor(options: { canvas: HTMLCanvasElement; antialias: boolean; alpha: boolean });
    setPixelRatio(ratio: number): void;
    setSize(width: number, height: number, styled: boolean): void;
    render(scene: Scene, camera: OrthographicCamera): void;
  }
}
