// How many random cases a test looks at. Under the sanitizers everything takes some ten times as long, so there it is a
// tenth of them: the first ones of the same seed, never none.
#pragma once

namespace gentlest::test {

#ifdef __has_feature
#if __has_feature(address_sanitizer)
#define GENTLEST_SANITIZED
#endif
#endif
#ifdef __SANITIZE_ADDRESS__
#define GENTLEST_SANITIZED
#endif

constexpr int cases(int all) {
#ifdef GENTLEST_SANITIZED
  return all < 10 ? 1 : all / 10;
#else
  return all;
#endif
}

}  // namespace gentlest::test
