#include "io/own_page.hpp"

#ifdef GENTLEST_PAGE_FILE
// The assembler puts the file in as it stands: as a C++ string it would be beyond what compilers take.
asm(".section .rodata\n"
    "gentlest_page_begin: .incbin \"" GENTLEST_PAGE_FILE
    "\"\n"
    "gentlest_page_end: .byte 0\n"
    ".global gentlest_page_begin\n"
    ".global gentlest_page_end\n"
    ".previous\n");
extern "C" const char gentlest_page_begin[];
extern "C" const char gentlest_page_end[];
#endif

namespace gentlest {

std::string own_page() {
#ifdef GENTLEST_PAGE_FILE
  return {gentlest_page_begin, gentlest_page_end};
#else
  return {};
#endif
}

}  // namespace gentlest
