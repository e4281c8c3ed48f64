/* What this machine can do at most with 128-bit vectors: f32 operations a second out of registers, and bytes a second over arrays as large as
 * the heat fields (argument: bytes of all of them), read and written as a kernel does: two streams in, one out. Prints GFLOP/s and GB/s. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#include <xmmintrin.h>

#define CHAINS 8
#define REPEATS 9

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

static double operations(float *sink) {
  __m128 x[CHAINS];
  const __m128 a = _mm_set1_ps(0.999f), b = _mm_set1_ps(1e-3f);
  for (int k = 0; k < CHAINS; k++) x[k] = _mm_set1_ps(1.0f + k);
  const int rounds = 2000000;
  const double t0 = now();
  for (int n = 0; n < rounds; n++)
    for (int k = 0; k < CHAINS; k++) x[k] = _mm_add_ps(_mm_mul_ps(x[k], a), b);
  const double seconds = now() - t0;
  for (int k = 0; k < CHAINS; k++) *sink += _mm_cvtss_f32(x[k]);
  return 8.0 * CHAINS * rounds / seconds / 1e9;
}

static double bytes(float *a, float *b, float *c, long floats) {
  const int rounds = 400;
  const __m128 s = _mm_set1_ps(0.5f);
  const double t0 = now();
  for (int n = 0; n < rounds; n++) {
    for (long i = 0; i < floats; i += 4)
      _mm_store_ps(a + i, _mm_add_ps(_mm_load_ps(b + i), _mm_mul_ps(s, _mm_load_ps(c + i))));
    /* The next round starts from this one's result. */
    float *old = c;
    c = a;
    a = old;
  }
  return 12.0 * floats * rounds / (now() - t0) / 1e9;
}

int main(int argc, char **argv) {
  const long floats = (argc > 1 ? atol(argv[1]) : 1 << 20) / 3 / 64 * 16;
  float *all = aligned_alloc(64, 3 * floats * sizeof(float));
  if (!all) return 1;
  for (long i = 0; i < 3 * floats; i++) all[i] = 1.0f;
  double flops = 0, rate = 0;
  float sink = 0;
  for (int n = 0; n < REPEATS; n++) {
    const double f = operations(&sink), r = bytes(all, all + floats, all + 2 * floats, floats);
    if (f > flops) flops = f;
    if (r > rate) rate = r;
  }
  printf("%.3f %.3f\n", flops, rate);
  return sink == -1.0f;
}
