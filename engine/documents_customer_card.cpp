// The card that lies on the stall: a question and its answer after the other, in letters to be read across a
// table. What the answers are is the card's own; nothing is left out and nothing added.
#include "documents.h"
#include "documents_paper.h"

namespace documents {
namespace {

constexpr std::string_view kCardStyle = R"css(
body{font-size:14pt}
h1{font-size:22pt}
h2{font-size:16pt;border-bottom:1pt solid #000}
.named{font-weight:600}
)css";

}  // namespace

std::string customer_card(const ::customer_card::Card& card, const words::Table& words) {
    const auto say = [&](std::string_view key, const words::Arguments& arguments = {}) {
        return words::say(words, key, arguments);
    };
    markup::Writer html =
        documents_paper::begin(words, card.title.empty() ? say("recipe.untitled") : card.title, kCardStyle);
    for (const ::customer_card::Answer& one : card.answers) {
        html.leaf("h2", say("ask." + std::string(::customer_card::topic_name(one.topic)) + "_title"));
        for (const std::string& sentence : one.sentences)
            html.leaf("p", sentence, {{"class", one.named ? "named" : "none"}});
    }
    html.leaf("h2", say("ask.note"));
    if (!card.unknown.empty()) {
        std::string names;
        for (const std::string& name : card.unknown)
            names += (names.empty() ? "" : ", ") + name;
        html.leaf("p", say("ask.unknown", {{"names", names}}), {{"class", "named"}});
    }
    html.leaf("p", say("ask.no_promise"));
    return html.finish();
}

}  // namespace documents
