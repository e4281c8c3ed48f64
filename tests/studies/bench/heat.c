/* The same two passes as engine/kernel/reference.ts in plain C, on a memory image written by the benchmark.
 * usage: heat IMAGE WARM STEPS REPEATS  ->  one line a repeat: seconds; last line: FNV of the enthalpy field's bits.
 */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

typedef struct {
  int32_t count, ny, stride, list, j0, j1;
  int32_t H, R, T, P, K, table, program, coefficient, listRod, listC, bytes, spare;
  float inv, least;
} Head;

static Head head;
static uint8_t *mem;

static void potential(int j0, int j1) {
  const float *restrict table = (const float *)(mem + head.table);
  const int32_t *restrict program = (const int32_t *)(mem + head.program);
  for (int r = 0; r < head.count; r++) {
    if (program[r * 8] == 0) continue;
    const long base = (long)r * head.stride + 4;
    const float *restrict H = (const float *)(mem + head.H) + base;
    float *restrict T = (float *)(mem + head.T) + base;
    float *restrict K = (float *)(mem + head.K) + base;
    const float inv = head.inv;
#pragma GCC ivdep
    for (int j = j0; j < j1; j++) {
      const float h = H[j];
      const float x = h * inv;
      int i = (int)x;
      i = i < 0 ? 0 : i > 2047 ? 2047 : i;
      T[j] = table[2 * i] + (x - (float)i) * table[2 * i + 1];
      K[j] = h > K[j] ? h : K[j];
    }
    T[-1] = T[0];
    T[head.ny] = T[head.ny - 1];
  }
}

static inline float least(float a, float b) { return b < a ? b : a; }

/* One function a kind of rod, with restrict arguments and ivdep, so that the compiler may vectorise along y. */
static void partial(int n, float *restrict H, float *restrict R, const float *T, const float *P, const float *ta, const float *tb,
                    const float *tc, const float *td, const float *pa, const float *pb, const float *pc, const float *pd,
                    const float *c, float floor) {
  const float c0 = c[0], c1 = c[1], c2 = c[2], c3 = c[3], cy = c[4];
#pragma GCC ivdep
  for (int j = 0; j < n; j++) {
    const float t = T[j], p = P[j];
    const float f0 = c0 * least(p, pa[j]) * (ta[j] - t);
    const float f1 = c1 * least(p, pb[j]) * (tb[j] - t);
    const float f2 = c2 * least(p, pc[j]) * (tc[j] - t);
    const float f3 = c3 * least(p, pd[j]) * (td[j] - t);
    const float below = least(p, P[j - 1]) * (T[j - 1] - t);
    const float above = least(p, P[j + 1]) * (T[j + 1] - t);
    const float sum = (((f0 + f1) + (f2 + f3)) + cy * (below + above)) / (p > floor ? p : floor);
    const float y = sum + R[j], h = H[j], next = h + y;
    R[j] = y - (next - h);
    H[j] = next;
  }
}

static void full(int n, float *restrict H, float *restrict R, const float *T, const float *ta, const float *tb, const float *tc,
                 const float *td, const float *c) {
  const float c0 = c[0], c1 = c[1], c2 = c[2], c3 = c[3], cy = c[4];
#pragma GCC ivdep
  for (int j = 0; j < n; j++) {
    const float t = T[j];
    const float f0 = c0 * (ta[j] - t), f1 = c1 * (tb[j] - t), f2 = c2 * (tc[j] - t), f3 = c3 * (td[j] - t);
    const float sum = ((f0 + f1) + (f2 + f3)) + cy * ((T[j - 1] - t) + (T[j + 1] - t));
    const float y = sum + R[j], h = H[j], next = h + y;
    R[j] = y - (next - h);
    H[j] = next;
  }
}

static void conduct(int j0, int j1) {
  const int32_t *program = (const int32_t *)(mem + head.program);
  const float *coefficient = (const float *)(mem + head.coefficient);
  const int32_t *listRod = (const int32_t *)(mem + head.listRod);
  const float *listC = (const float *)(mem + head.listC);
  float *H0 = (float *)(mem + head.H) + j0;
  float *R0 = (float *)(mem + head.R) + j0;
  const float *T0 = (const float *)(mem + head.T) + j0;
  const float *P0 = (const float *)(mem + head.P) + j0;
  const int n = j1 - j0;
  for (int r = 0; r < head.count; r++) {
    const int32_t *w = program + r * 8;
    const int flag = w[0];
    if (flag == 0) continue;
    const long base = (long)r * head.stride + 4;
    const float *c = coefficient + r * 8;
    const float *ta = T0 + w[1], *tb = T0 + w[2], *tc = T0 + w[3], *td = T0 + w[4];
    if (flag == 2) {
      partial(n, H0 + base, R0 + base, T0 + base, P0 + base, ta, tb, tc, td, P0 + w[1], P0 + w[2], P0 + w[3], P0 + w[4], c, head.least);
    } else if (w[6] == 0) {
      full(n, H0 + base, R0 + base, T0 + base, ta, tb, tc, td, c);
    } else {
      float *H = H0 + base, *R = R0 + base;
      const float *T = T0 + base;
      for (int j = 0; j < n; j++) {
        const float t = T[j];
        const float f0 = c[0] * (ta[j] - t), f1 = c[1] * (tb[j] - t), f2 = c[2] * (tc[j] - t), f3 = c[3] * (td[j] - t);
        float sum = ((f0 + f1) + (f2 + f3)) + c[4] * ((T[j - 1] - t) + (T[j + 1] - t));
        for (int l = w[5]; l < w[5] + w[6]; l++) sum = sum + listC[l] * (T0[listRod[l] + j] - t);
        const float y = sum + R[j], h = H[j], next = h + y;
        R[j] = y - (next - h);
        H[j] = next;
      }
    }
  }
}

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

int main(int argc, char **argv) {
  if (argc != 5) return 2;
  FILE *f = fopen(argv[1], "rb");
  if (!f || fread(&head, sizeof head, 1, f) != 1) return 3;
  if (posix_memalign((void **)&mem, 64, (size_t)head.bytes)) return 4;
  if (fread(mem, 1, (size_t)head.bytes, f) != (size_t)head.bytes) return 5;
  const int warm = atoi(argv[2]), steps = atoi(argv[3]), repeats = atoi(argv[4]);
  for (int s = 0; s < warm; s++) {
    potential(head.j0, head.j1);
    conduct(head.j0, head.j1);
  }
  for (int k = 0; k < repeats; k++) {
    const double t0 = now();
    for (int s = 0; s < steps; s++) {
      potential(head.j0, head.j1);
      conduct(head.j0, head.j1);
    }
    printf("%.9f\n", now() - t0);
  }
  uint32_t hash = 0x811c9dc5u;
  const uint32_t *words = (const uint32_t *)(mem + head.H);
  for (int r = 0; r < head.count; r++)
    for (int j = head.j0; j < head.j1; j++) hash = (hash ^ words[(long)r * head.stride + 4 + j]) * 0x01000193u;
  printf("%08x\n", hash);
  return 0;
}
