#include "app/store/statements.h"

namespace lanework::store {

std::int64_t whole_in(const Value& value) {
  const auto* whole = std::get_if<std::int64_t>(&value);
  return whole == nullptr ? 0 : *whole;
}

std::string text_in(const Value& value) {
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  const auto* bytes = std::get_if<Bytes>(&value);
  return bytes == nullptr ? std::string() : bytes->bytes;
}

Value bytes_or_null(const std::string& bytes) { return bytes.empty() ? Value() : Value(Bytes{bytes}); }

Value text_or_null(const std::string& text) { return text.empty() ? Value() : Value(text); }

Result<Answer> Statements::run(const std::string& text, const std::vector<Value>& values) {
  for (const Value& value : values) {
    const auto* given = std::get_if<std::string>(&value);
    if (given == nullptr || given->find('\0') == std::string::npos) continue;
    return Fault{FaultCode::kContradiction, {name(), 0, 0, {}}, "a text with a zero byte", "a text without one", {}};
  }
  return ask(text, values);
}

Call::Call(Statements& statements, Of of) : statements_(statements) {
  if (of == Of::kOneStatement) return;
  faults_ = statements_.begin();
  open_ = !faults_;
}

Call::~Call() {
  if (open_) statements_.roll_back();
}

std::vector<std::vector<Value>> Call::rows(const std::string& text, const std::vector<Value>& values) {
  return ask(text, values).rows;
}

std::int64_t Call::changed(const std::string& text, const std::vector<Value>& values) {
  return ask(text, values).changed;
}

void Call::fail(Fault fault) {
  if (!faults_) faults_ = Faults{std::move(fault)};
}

Answer Call::ask(const std::string& text, const std::vector<Value>& values) {
  if (faults_) return {};
  auto answer = statements_.run(text, values);
  if (answer) return std::move(answer).value();
  faults_ = answer.faults();
  return {};
}

void Call::commit() {
  if (!open_ || faults_) return;
  faults_ = statements_.commit();
  open_ = faults_.has_value();
}

}  // namespace lanework::store
