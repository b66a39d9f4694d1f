// The limits of a job, once: reader, check, JSON, command line, help and the tests of the documents walk this table.
#pragma once

#include "gentlest/base/typed_number.hpp"
#include "gentlest/job/job.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace gentlest {

/// What the ends of a range mean: both belong to it; neither does; both do, and 100 must be a multiple of the value.
enum class Ends { belong, excluded, divide_100 };

/// One limit. Truths and lists have no range.
struct Limit {
  using Member = std::variant<int Limits::*, double Limits::*, std::optional<int> Limits::*,
                              std::optional<double> Limits::*, bool Limits::*, std::vector<std::string> Limits::*>;
  const char* key;  ///< in the job's file and in JSON; carries the unit
  Member member;
  double smallest = 0, largest = 0;
  Ends ends = Ends::belong;
  const char* unit = "";
  const char* option = "";  ///< of the command line, without its dashes; empty where the file alone says it
};

/// The grade up to which a layer to keep counts as affected where neither the job nor its material says: 4 is "swells
/// clearly or worse".
inline constexpr int usual_risk_grade = 4;

/// What counts on one material: for one to keep the job's own word, else what is harm to it, else the usual; for one to
/// remove the job's word. Never only grades stronger than ever happen to it.
int risk_grade_of(std::optional<int> harm_grade, int strongest_grade, const Limits& limits);
int effect_grade_of(int strongest_grade, const Limits& limits);

/// All limits, in the order in which JSON shows them. What is left out in a job stays as Limits has it.
const std::vector<Limit>& all_limits();

/// Null when there is none of that key.
const Limit* find_limit(std::string_view key);

/// The limit's number; nothing for truths, lists and a number that is left out.
std::optional<double> number_of(const Limit& limit, const Limits& limits);

/// Precondition: the limit is a number.
void put_number(const Limit& limit, double value, Limits& limits);

bool is_whole(const Limit& limit);
bool has_range(const Limit& limit);
bool is_within(const Limit& limit, double value);

/// The range for messages and help: "1 to 4", "between 0 and 1", "divides 100".
std::string range_words(const Limit& limit);

/// Behind "parts is 5, " in a message: "outside 1 to 4", "not between 0 and 1", "which does not divide 100".
std::string outside_words(const Limit& limit);

/// What a number must be to stand there, for the cure of one that cannot.
WantedNumber wanted_of(const Limit& limit);

/// What would be right instead of a value outside the range: "did you mean 0.25?"; empty where the range tells it.
std::string range_remedy(const Limit& limit, double value);

}  // namespace gentlest
