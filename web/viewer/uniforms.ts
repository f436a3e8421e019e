/** Uniforms by name; one that a program does not have is a fault of ours. */
import type { ShaderMaterial, Vector2, Vector3, Vector4 } from 'three';

export function setUniform(material: ShaderMaterial, name: string, value: unknown): void {
  const u = material.uniforms[name];
  if (!u) throw new Error(`no uniform ${name}`);
  u.value = value;
}
/** Sets the numbers of a vector in place. */
export function setNumbers(material: ShaderMaterial, name: string, numbers: readonly number[]): void {
  const v = material.uniforms[name]?.value as Vector2 | Vector3 | Vector4 | undefined;
  if (!v) throw new Error(`no uniform ${name}`);
  v.fromArray(numbers as number[]);
}
