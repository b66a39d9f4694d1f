// Faults of the command line that several steps find, told together.
#pragma once

#include "gentlest/base/diagnostic.hpp"

#include <utility>
#include <vector>

namespace gentlest {

class UsageFaults {
 public:
  /// Carries the step out; what it says against the command line waits, a faulty file is told at once.
  template <class Step>
  void hear(const Step& step) {
    try {
      step();
    } catch (const InputError& error) {
      if (error.kind() != Fault::usage) throw;
      faults_.insert(faults_.end(), error.faults().begin(), error.faults().end());
    }
  }

  /// Throws InputError (Fault::usage) with all that was heard.
  void tell() {
    if (!faults_.empty()) throw InputError(Fault::usage, std::move(faults_));
  }

 private:
  std::vector<Diagnostic> faults_;
};

}  // namespace gentlest
