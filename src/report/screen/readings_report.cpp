#include "report/screen/readings_report.hpp"

#include "report/form/format.hpp"
#include "report/form/sheet.hpp"

namespace gentlest {

std::string readings_report(const std::vector<Reading>& readings, Form form, const Style& style,
                            const Edition& edition) {
  Sheet sheet;
  sheet.kind = "readings";
  sheet.columns = {
      {"test", "test", -1, false},        {"date", "date", -1, false},       {"who", "", -1, false},
      {"mixture", "mixture", -1, true},   {"passage", "passage", -1, true},  {"at_edge", "at edge", -1, false},
      {"rolls", "", -1, false},           {"seconds", "seconds", -1, false}, {"removal", "removal", -1, true},
      {"original", "original", -1, true}, {"confidence", "", -1, false},     {"remark", "", -1, true},
      {"correction", "", -1, true}};
  const auto words = [](std::string_view text) { return text.empty() ? Cell() : Cell(std::string(text)); };
  for (const Reading& one : readings)
    sheet.rows.push_back(
        {Cell(static_cast<double>(one.test)), words(one.date), words(one.who), words(one.mixture), words(one.passage),
         Cell(one.at_edge), one.rolls ? Cell(static_cast<double>(*one.rolls)) : Cell(),
         one.seconds ? Cell(*one.seconds) : Cell(), one.removal ? words(to_word(*one.removal)) : Cell(),
         one.original ? words(to_word(*one.original)) : Cell(), words(to_word(one.confidence)), words(one.remark),
         words(one.correction)});
  return sheet_report(sheet, form, style, edition);
}

}  // namespace gentlest
