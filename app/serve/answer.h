// Answers as the routes make them: JSON with a status.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "app/serve/http/message.h"
#include "core/base/document.h"

namespace lanework::serve {

Response json_answer(int status, const Node& body);
// 200 with JSON that is written already.
Response text_answer(std::shared_ptr<const std::string> json);
// {"error": key, "what": sentence}. Keys are part of the contract (schema/openapi.yaml).
Response error_answer(int status, const std::string& key, const std::string& what);
// {"error", "what", "key"}: where one error has several causes, which it is.
Response error_answer(int status, const std::string& error, const std::string& what, const std::string& key);
// The same with every fault's field, what was found and what was expected.
Response fault_answer(const Faults& faults);
// Where the store could not do it: 507 for a full disk, else 503. Nothing of the fault's own words goes out.
Response store_answer(const Faults& faults);

// 404: what is asked for lies in the club's folder, and the server was given none.
Response no_folder();

// To show: a document with that name, should somebody keep it.
Response pdf_answer(std::string bytes, const std::string& name);

Node texts_node(const std::vector<std::string>& texts);

}  // namespace lanework::serve
