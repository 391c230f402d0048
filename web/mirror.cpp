// The register of mirror.h and the text it travels in. Holds one register for the whole program, because
// there is one page. Leans on the platform for nothing but set_mirror(); creates no elements, that is
// shell/lib_mirror.js.
//
// What set_mirror() gets: one record per node in reading order, a parent before its children, records
// separated by \x1e, fields by \x1f (both are taken out of all texts):
//   id, parent's id or 0, role, flags, x, y, width, height (quarters of a CSS pixel), level, most bytes,
//   name, value, description
// Role is the enumerator's name. Flags are letters: d disabled, c checked, u current, e expanded, p has
// popup, i invalid, v visible, l large, f last field, n inert (outside the open dialog), t a button that is
// pressed (c) or not.
#include "web/mirror.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace mirror {

namespace {

constexpr const char* kRoleNames[] = {
    "navigation",   "main",          "region",        "list",       "item",       "table",
    "row",          "dialog",        "heading",       "text",       "button",     "checkbox",
    "tab",          "cell",          "column_header", "row_header", "field_text", "field_decimal",
    "field_search", "field_address", "field_note",    "status",     "alert",
};
static_assert(std::size(kRoleNames) == static_cast<std::size_t>(Role::alert) + 1);

// A click nobody took lapses with the second frame after it: the widget it was meant for is gone or disabled.
constexpr int kFramesToTake = 2;

struct Pending {
    platform::Kind kind;
    std::uint32_t node;
    std::string text;
    bool shift;
    int frames_left;
};

// Nodes with their parents, in reading order. What was removed keeps its room for the texts of the next
// frame.
struct Nodes {
    std::vector<Node> nodes;
    std::vector<std::uint32_t> parents;
    std::size_t count = 0;  // of those that stand

    Node& add(std::uint32_t parent) {
        if (count == nodes.size()) {
            nodes.emplace_back();
            parents.emplace_back();
        }
        parents[count] = parent;
        return nodes[count++];
    }
    // Takes over what `other` has; whether that was different. What follows the last one is let go.
    bool follow(const Nodes& other) {
        bool changed = count != other.count;
        nodes.resize(other.count);
        parents.resize(other.count);
        for (count = 0; count < other.count; ++count) {
            if (parents[count] == other.parents[count] && nodes[count] == other.nodes[count]) continue;
            parents[count] = other.parents[count];
            nodes[count] = other.nodes[count];
            changed = true;
        }
        return changed;
    }
};

struct Register {
    Nodes building, before, finished;  // of this frame, of the one before, of the last step
    std::vector<std::uint32_t> open;   // containers not closed yet
    std::vector<std::uint32_t> used;   // ids of this frame, sorted
    std::vector<Pending> pending;
    bool unhanded = true;  // what is finished, since it was handed over last
    std::string handed;
    std::uint32_t focus = 0;
    bool focus_arrived = false;
    int clashes = 0, finished_clashes = 0;
};

Register& all() {
    static Register the_one;
    return the_one;
}

bool field_role(Role role) {
    return role == Role::field_text || role == Role::field_decimal || role == Role::field_search ||
           role == Role::field_address || role == Role::field_note;
}

bool mark_used(std::uint32_t id) {
    auto& used = all().used;
    const auto place = std::lower_bound(used.begin(), used.end(), id);
    if (place != used.end() && *place == id) return false;
    used.insert(place, id);
    return true;
}

// FNV-1a over the parent, the role and a count: the same place in the same register gets the same id.
std::uint32_t made_id(std::uint32_t parent, Role role, std::uint32_t count) {
    std::uint32_t hash = 2166136261u;
    for (const std::uint32_t part : {parent, static_cast<std::uint32_t>(role), count}) {
        for (int shift = 0; shift < 32; shift += 8)
            hash = (hash ^ ((part >> shift) & 0xffu)) * 16777619u;
    }
    return hash == 0 ? 1 : hash;
}

std::uint32_t place(Node node) {
    Register& r = all();
    const std::uint32_t parent = r.open.empty() ? 0 : r.open.back();
    bool fresh = node.id != 0 && mark_used(node.id);
    if (!fresh) {
        if (node.id != 0) r.clashes += 1;
        for (std::uint32_t count = 0; !fresh; ++count) {
            node.id = made_id(parent, node.role, count);
            fresh = mark_used(node.id);
        }
    }
    const std::uint32_t id = node.id;
    r.building.add(parent) = std::move(node);
    return id;
}

void append_text(std::string& to, const std::string& text) {
    to += '\x1f';
    for (const char c : text) {
        if (c != '\x1e' && c != '\x1f' && c != '\0') to += c;
    }
}

void append_number(std::string& to, long number) {
    to += '\x1f';
    to += std::to_string(number);
}

void append_quarters(std::string& to, float px) {
    append_number(to, std::isfinite(px) ? std::lround(std::clamp(px, -1e6f, 1e6f) * 4) : 0);
}

// For each node: does it stand outside the dialog that was opened last? Its ancestors do not count as
// outside.
std::vector<bool> outside_dialog(const std::vector<Node>& nodes, const std::vector<std::uint32_t>& parents) {
    std::vector<bool> outside(nodes.size(), false);
    std::size_t dialog = nodes.size();
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        if (nodes[i].role == Role::dialog) dialog = i;
    }
    if (dialog == nodes.size()) return outside;

    outside.assign(nodes.size(), true);
    outside[dialog] = false;
    std::vector<std::uint32_t> within{nodes[dialog].id};
    for (std::size_t i = dialog + 1; i < nodes.size(); ++i) {
        if (std::find(within.begin(), within.end(), parents[i]) == within.end()) continue;
        outside[i] = false;
        within.push_back(nodes[i].id);
    }
    std::uint32_t above = parents[dialog];
    for (std::size_t i = dialog; i-- > 0;) {
        if (nodes[i].id != above) continue;
        outside[i] = false;
        above = parents[i];
    }
    return outside;
}

std::string pack(const Nodes& finished) {
    const std::vector<Node>& nodes = finished.nodes;
    const std::vector<std::uint32_t>& parents = finished.parents;
    std::string packed;
    packed.reserve(nodes.size() * 96);
    const std::vector<bool> outside = outside_dialog(nodes, parents);
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        const Node& node = nodes[i];
        if (i > 0) packed += '\x1e';
        packed += std::to_string(node.id);
        packed += '\x1f';
        packed += std::to_string(parents[i]);
        packed += '\x1f';
        packed += kRoleNames[static_cast<std::size_t>(node.role)];
        packed += '\x1f';
        const std::pair<bool, char> flags[] = {
            {node.disabled, 'd'},   {node.checked, 'c'}, {node.current, 'u'}, {node.expanded, 'e'},
            {node.has_popup, 'p'},  {node.invalid, 'i'}, {node.visible, 'v'}, {node.large, 'l'},
            {node.last_field, 'f'}, {outside[i], 'n'},   {node.toggle, 't'},
        };
        for (const auto& [on, letter] : flags) {
            if (on) packed += letter;
        }
        append_quarters(packed, node.x);
        append_quarters(packed, node.y);
        append_quarters(packed, node.width);
        append_quarters(packed, node.height);
        append_number(packed, node.level);
        append_number(packed, node.most_bytes);
        append_text(packed, node.name);
        append_text(packed, node.value);
        append_text(packed, node.description);
    }
    return packed;
}

const Node* finished_node(std::uint32_t id) {
    const auto& nodes = all().finished.nodes;
    const auto place = std::find_if(nodes.begin(), nodes.end(), [&](const Node& n) { return n.id == id; });
    return place == nodes.end() ? nullptr : &*place;
}

bool take(platform::Kind kind, std::uint32_t id) {
    return std::erase_if(all().pending, [&](const Pending& p) { return p.kind == kind && p.node == id; }) > 0;
}

}  // namespace

void begin_frame() {
    Register& r = all();
    std::swap(r.building, r.before);
    r.building.count = 0;
    r.open.clear();
    r.used.clear();
    r.clashes = 0;
}

void open(Node container) {
    const std::uint32_t id = place(std::move(container));
    all().open.push_back(id);
}

void close() {
    if (!all().open.empty()) all().open.pop_back();
}

void add(Node leaf) {
    place(std::move(leaf));
}

bool used(std::uint32_t id) {
    return std::binary_search(all().used.begin(), all().used.end(), id);
}

std::size_t count() {
    return all().building.count;
}

void repeat(std::size_t first, std::size_t count, float right, float down) {
    Register& r = all();
    for (std::size_t i = first; i < first + count && i < r.before.count; ++i) {
        Node& node = r.building.add(r.before.parents[i]);
        node = r.before.nodes[i];
        mark_used(node.id);
        if (node.width == 0 && node.height == 0) continue;  // lies nowhere, as a list does
        node.x += right;
        node.y += down;
    }
}

bool answered() {
    return all().pending.empty() && !all().focus_arrived;
}

void end_frame(bool settled) {
    Register& r = all();
    const Node* old_field = r.focus == 0 ? nullptr : finished_node(r.focus);
    const Node before = old_field ? *old_field : Node{};
    if (r.finished.follow(r.building)) r.unhanded = true;
    r.finished_clashes = r.clashes;
    for (Pending& p : r.pending)
        p.frames_left -= 1;
    std::erase_if(r.pending, [](const Pending& p) { return p.frames_left <= 0; });

    // The native field lies over the drawn one and has to move with it, settled or not.
    bool field_moved = false;
    if (const Node* field = r.focus == 0 ? nullptr : finished_node(r.focus);
        field && field_role(field->role)) {
        field_moved = field->x != before.x || field->y != before.y || field->width != before.width ||
                      field->height != before.height || field->visible != before.visible;
    }
    if (!r.unhanded || (!settled && !field_moved)) return;
    r.unhanded = false;
    std::string packed = pack(r.finished);
    if (packed == r.handed) return;
    r.handed = std::move(packed);
    platform::set_mirror(r.handed);
}

void receive(const platform::Event& event) {
    using platform::Kind;
    Register& r = all();
    switch (event.kind) {
        case Kind::node_focus:
            r.focus = event.node;
            r.focus_arrived = true;
            return;
        case Kind::node_blur:
            if (r.focus == event.node) {
                r.focus = 0;
                r.focus_arrived = false;
            }
            break;
        case Kind::node_input:
            take(Kind::node_input, event.node);  // only the newest text counts
            break;
        case Kind::node_click:
        case Kind::node_menu:
        case Kind::node_enter:
            break;
        default:
            return;
    }
    r.pending.push_back({event.kind, event.node, event.text, event.shift, kFramesToTake});
}

bool take_click(std::uint32_t id) {
    return take(platform::Kind::node_click, id);
}

bool take_menu(std::uint32_t id) {
    return take(platform::Kind::node_menu, id);
}

std::optional<std::string> take_input(std::uint32_t id) {
    for (const Pending& p : all().pending) {
        if (p.kind != platform::Kind::node_input || p.node != id) continue;
        std::string text = p.text;
        take(platform::Kind::node_input, id);
        return text;
    }
    return std::nullopt;
}

int take_enter(std::uint32_t id) {
    for (const Pending& p : all().pending) {
        if (p.kind != platform::Kind::node_enter || p.node != id) continue;
        const int step = p.shift ? -1 : 1;
        take(platform::Kind::node_enter, id);
        return step;
    }
    return 0;
}

bool take_blur(std::uint32_t id) {
    return take(platform::Kind::node_blur, id);
}

bool focused(std::uint32_t id) {
    return id != 0 && all().focus == id;
}

bool is_field(std::uint32_t id) {
    const Node* node = finished_node(id);
    return node && field_role(node->role);
}

std::uint32_t focus() {
    return all().focus;
}

bool take_focus_arrived(std::uint32_t id) {
    if (!focused(id) || !all().focus_arrived) return false;
    all().focus_arrived = false;
    return true;
}

const std::vector<Node>& nodes() {
    return all().finished.nodes;
}

std::uint32_t find(Role role, std::string_view name) {
    for (const Node& node : all().finished.nodes) {
        if (node.role == role && node.name == name) return node.id;
    }
    return 0;
}

int clashes() {
    return all().finished_clashes;
}

void start_over() {
    all() = Register{};
}

}  // namespace mirror
