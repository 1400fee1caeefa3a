// seamwright for C++17: value types over the C header, nothing to link besides the C library.
//
// Errors are exceptions (sw::failure), or, with SEAMWRIGHT_NO_EXCEPTIONS defined before inclusion, an empty
// std::optional with the error in the sw_error that the caller may pass. The conventions stand in seamwright.h.
#ifndef SEAMWRIGHT_HPP
#define SEAMWRIGHT_HPP

#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "seamwright.h"

#ifndef SEAMWRIGHT_NO_EXCEPTIONS
#include <stdexcept>
#endif

namespace sw {

// A text of the library, whatever function writes it: text([&](char *b, size_t n, size_t *s) { return f(.., b, n, s); }).
template <class Write>
std::optional<std::string> text_of(Write write, std::uint32_t *status = nullptr)
{
    std::size_t size = 0;
    std::uint32_t said = write(static_cast<char *>(nullptr), std::size_t{0}, &size);
    std::string text(size, '\0');
    if (said == SW_OK)
        said = write(&text[0], text.size(), &size);
    if (status)
        *status = said;
    if (said != SW_OK)
        return std::nullopt;
    text.resize(size - 1);
    return text;
}

// The whole error in words.
inline std::string message(const sw_error &error)
{
    return text_of([&](char *b, std::size_t n, std::size_t *s) { return sw_error_message(&error, b, n, s); })
        .value_or("the error cannot be read");
}

#ifndef SEAMWRIGHT_NO_EXCEPTIONS
// What the library refused.
class failure : public std::runtime_error {
public:
    explicit failure(const sw_error &error) : std::runtime_error(message(error)), error_(error) {}
    const sw_error &error() const noexcept { return error_; }

private:
    sw_error error_;
};
template <class T> using result = T;
#else
template <class T> using result = std::optional<T>;
#endif

namespace detail {
// Runs a call with an error struct of its own, and turns its failure into what was chosen.
template <class T, class Call> result<T> call(T value, sw_error *error, Call run)
{
    sw_error own;
    sw_error_init(&own);
    if (run(value, &own) == SW_OK)
        return value;
    if (error)
        *error = own;
#ifndef SEAMWRIGHT_NO_EXCEPTIONS
    throw failure(own);
#else
    return std::nullopt;
#endif
}

// A text whose writer has an error struct.
template <class Write> result<std::string> text(sw_error *error, Write write)
{
    return call(std::string(), error, [&](std::string &all, sw_error *e) {
        std::uint32_t status = SW_OK;
        auto found =
            text_of([&](char *b, std::size_t n, std::size_t *s) { return write(b, n, s, e); }, &status);
        if (found)
            all = std::move(*found);
        return status;
    });
}

// An array of which the size is not known before: list(array, capacity, count, error).
template <class T, class List> result<std::vector<T>> array(sw_error *error, List list)
{
    return call(std::vector<T>(), error, [&](std::vector<T> &all, sw_error *e) {
        std::size_t count = 0;
        const std::uint32_t status = list(static_cast<T *>(nullptr), std::size_t{0}, &count, e);
        if (status != SW_OK)
            return status;
        all.resize(count);
        return list(all.data(), all.size(), &count, e);
    });
}

template <class T> T made(void (*init)(T *))
{
    T value;
    init(&value);
    return value;
}
} // namespace detail

// What is not a number is not there.
inline std::optional<double> known(double value)
{
    return std::isnan(value) ? std::nullopt : std::optional<double>(value);
}

// Structs filled with their defaults.
inline sw_joint joint() { return detail::made(sw_joint_init); }
inline sw_brief brief() { return detail::made(sw_brief_init); }
inline sw_materials materials() { return detail::made(sw_materials_init); }
inline sw_order order() { return detail::made(sw_order_init); }
inline sw_style style() { return detail::made(sw_style_init); }
inline sw_shell shell() { return detail::made(sw_shell_init); }
inline sw_existing existing() { return detail::made(sw_existing_init); }
inline sw_search searching() { return detail::made(sw_search_init); }
inline sw_group group() { return detail::made(sw_group_init); }
inline sw_vessel_brief vessel_brief() { return detail::made(sw_vessel_brief_init); }
inline sw_tolerances tolerances() { return detail::made(sw_tolerances_init); }
inline sw_title title() { return detail::made(sw_title_init); }
inline sw_sheet sheet() { return detail::made(sw_sheet_init); }
inline sw_sweep sweeping() { return detail::made(sw_sweep_init); }

// A built-in rule book.
inline result<sw_rules> rules(const char *id, sw_error *error = nullptr)
{
    return detail::call(detail::made(sw_rules_init), error,
                        [&](sw_rules &r, sw_error *e) { return sw_rules_find(id, &r, e); });
}

// A book with one entry changed.
inline result<sw_rules> changed(sw_rules book, const char *key, double value, sw_error *error = nullptr)
{
    return detail::call(book, error, [&](sw_rules &r, sw_error *e) { return sw_rules_set(&r, key, value, e); });
}

// Forms.
inline result<sw_form> lap(std::uint32_t rows, sw_error *error = nullptr)
{
    return detail::call(sw_form{}, error, [&](sw_form &f, sw_error *e) { return sw_form_lap(rows, &f, e); });
}
inline result<sw_form> single_strap(std::uint32_t rows, sw_error *error = nullptr)
{
    return detail::call(sw_form{}, error, [&](sw_form &f, sw_error *e) { return sw_form_single_strap(rows, &f, e); });
}
inline result<sw_form> double_strap(std::uint32_t rows, sw_error *error = nullptr)
{
    return detail::call(sw_form{}, error, [&](sw_form &f, sw_error *e) { return sw_form_double_strap(rows, &f, e); });
}
inline result<sw_form> unequal_straps(std::uint32_t rows, sw_error *error = nullptr)
{
    return detail::call(sw_form{}, error, [&](sw_form &f, sw_error *e) { return sw_form_unequal_straps(rows, &f, e); });
}

// What a check finds.
struct checked {
    sw_analysis analysis;
    std::vector<sw_finding> findings;
};

inline result<checked> check(const sw_joint &joint, const sw_materials &materials, const sw_rules &rules,
                             sw_error *error = nullptr)
{
    checked start{detail::made(sw_analysis_init), std::vector<sw_finding>(SW_MAX_FINDINGS)};
    return detail::call(std::move(start), error, [&](checked &c, sw_error *e) {
        std::size_t count = 0;
        const std::uint32_t status = sw_joint_check(&joint, &materials, &rules, &c.analysis, c.findings.data(),
                                                    c.findings.size(), &count, e);
        c.findings.resize(count);
        return status;
    });
}

// A sized joint: what was found, why, and its check.
struct sized {
    sw_joint joint;
    sw_design design;
    sw_analysis analysis;
    std::vector<sw_finding> findings;
};

inline result<sized> size(const sw_brief &brief, const sw_rules &rules, sw_error *error = nullptr)
{
    sized start{detail::made(sw_joint_init), detail::made(sw_design_init), detail::made(sw_analysis_init),
                std::vector<sw_finding>(SW_MAX_FINDINGS)};
    return detail::call(std::move(start), error, [&](sized &s, sw_error *e) {
        std::size_t count = 0;
        const std::uint32_t status = sw_joint_size(&brief, &rules, &s.joint, &s.design, &s.analysis, s.findings.data(),
                                                   s.findings.size(), &count, e);
        s.findings.resize(count);
        return status;
    });
}

// All modes of a joint.
inline result<std::vector<sw_mode>> modes(const sw_joint &joint, const sw_materials &materials, const sw_rules &rules,
                                          sw_error *error = nullptr)
{
    return detail::array<sw_mode>(error, [&](sw_mode *m, std::size_t n, std::size_t *count, sw_error *e) {
        return sw_modes_list(&joint, &materials, &rules, m, n, count, e);
    });
}

// A mode in words.
inline std::string name(const sw_form &form, const sw_mode &mode)
{
    return text_of([&](char *b, std::size_t n, std::size_t *s) { return sw_mode_name(&form, &mode, b, n, s); })
        .value_or("");
}

// The working of a check, in the dialect of the style.
inline result<std::string> working(const sw_joint &joint, const sw_materials &materials, const sw_rules &rules,
                                   const sw_style &style, sw_error *error = nullptr)
{
    return detail::text(error, [&](char *b, std::size_t n, std::size_t *s, sw_error *e) {
        return sw_working_check(&joint, &materials, &rules, &style, b, n, s, e);
    });
}

// A rated joint: the joint as it was taken, its check, the findings on the shell and then on the joint, and what all
// this rests on.
struct rated {
    sw_rating rating;
    sw_joint joint;
    sw_analysis analysis;
    std::vector<sw_finding> findings;
    std::vector<sw_assumption> assumptions;
};

inline result<rated> rate(const sw_existing &existing, const sw_rules &rules, sw_error *error = nullptr)
{
    rated start{detail::made(sw_rating_init), detail::made(sw_joint_init), detail::made(sw_analysis_init),
                std::vector<sw_finding>(2 * SW_MAX_FINDINGS), std::vector<sw_assumption>(SW_MAX_ASSUMPTIONS)};
    return detail::call(std::move(start), error, [&](rated &r, sw_error *e) {
        std::size_t count = 0;
        std::uint32_t status = sw_existing_rate(&existing, &rules, &r.rating, &r.joint, &r.analysis, e);
        if (status == SW_OK)
            status = sw_existing_findings(&existing, &rules, r.findings.data(), r.findings.size(), &count, e);
        r.findings.resize(count), count = 0;
        if (status == SW_OK)
            status = sw_existing_assumptions(&existing, &rules, r.assumptions.data(), r.assumptions.size(), &count, e);
        r.assumptions.resize(count);
        return status;
    });
}

// The working of a rating.
inline result<std::string> working(const sw_existing &existing, const sw_rules &rules, const sw_style &style,
                                   sw_error *error = nullptr)
{
    return detail::text(error, [&](char *b, std::size_t n, std::size_t *s, sw_error *e) {
        return sw_working_rate(&existing, &rules, &style, b, n, s, e);
    });
}

// The best joints of a grid, and the counts. Nothing found is an empty list, and the counts say why.
struct searched {
    std::vector<sw_ranked> best;
    sw_tally tally;
};

inline result<searched> search(const sw_search &brief, const sw_rules &rules, sw_error *error = nullptr)
{
    searched start{std::vector<sw_ranked>(SW_MAX_BEST), detail::made(sw_tally_init)};
    return detail::call(std::move(start), error, [&](searched &s, sw_error *e) {
        std::size_t count = 0;
        const std::uint32_t status = sw_search_best(&brief, &rules, s.best.data(), s.best.size(), &count, &s.tally, e);
        s.best.resize(count);
        return status;
    });
}

// The front of efficiency against mass, of at most so many joints.
inline result<std::vector<sw_candidate>> front(const sw_search &brief, const sw_rules &rules, std::size_t most = 1000,
                                               sw_error *error = nullptr)
{
    return detail::call(std::vector<sw_candidate>(most), error, [&](std::vector<sw_candidate> &f, sw_error *e) {
        std::vector<sw_front_slot> slots(most);
        std::size_t count = 0;
        const std::uint32_t status =
            sw_search_front(&brief, &rules, slots.data(), f.data(), most, &count, nullptr, e);
        f.resize(status == SW_OK ? count : 0);
        return status;
    });
}

// A shell with its seams; where nothing fits, `vessel.fits` is 0 and `why` may say more.
struct designed {
    sw_vessel vessel;
    sw_joint seam;
    sw_joint girth_joint;
    sw_girth girth;
    sw_error why;
};

inline result<designed> design(const sw_vessel_brief &brief, const sw_rules &rules, sw_error *error = nullptr)
{
    designed start{detail::made(sw_vessel_init), detail::made(sw_joint_init), detail::made(sw_joint_init),
                   detail::made(sw_girth_init), detail::made(sw_error_init)};
    return detail::call(start, error, [&](designed &d, sw_error *e) {
        return sw_vessel_design(&brief, &rules, &d.vessel, &d.seam, &d.girth_joint, &d.girth, &d.why, e);
    });
}

// A group of rivets under its load, and what each rivet takes.
struct grouped {
    sw_group_found found;
    std::vector<sw_rivet_load> rivets;
};

namespace detail {
template <typename Routine>
result<grouped> held(Routine routine, const sw_group &group, const sw_rules &rules, sw_error *error)
{
    grouped start{made(sw_group_found_init), std::vector<sw_rivet_load>(SW_MAX_GROUP)};
    return call(start, error, [&](grouped &g, sw_error *e) {
        std::size_t count = 0;
        const std::uint32_t status = routine(&group, &rules, &g.found, nullptr, 0, nullptr, e);
        if (status != SW_OK)
            return status;
        const std::uint32_t listed = sw_group_rivets(&group, &rules, g.rivets.data(), g.rivets.size(), &count, e);
        g.rivets.resize(listed == SW_OK ? count : 0);
        return listed;
    });
}
} // namespace detail

inline result<grouped> check_group(const sw_group &group, const sw_rules &rules, sw_error *error = nullptr)
{
    return detail::held(sw_group_check, group, rules, error);
}

inline result<grouped> size_group(const sw_group &group, const sw_rules &rules, sw_error *error = nullptr)
{
    return detail::held(sw_group_size, group, rules, error);
}

// A case of a joint that was checked.
inline sw_case checked_case(const sw_joint &joint, const sw_materials &materials)
{
    sw_case c = detail::made(sw_case_init);
    c.joint = &joint, c.materials = &materials;
    return c;
}

// A figure as printed, by the symbol of its quantity.
inline result<sw_figure> figure(const char *symbol, std::uint32_t row, const char *printed, double scale = 1,
                                sw_error *error = nullptr)
{
    sw_figure start{};
    start.name.row = row, start.printed = printed, start.scale = scale;
    return detail::call(start, error,
                        [&](sw_figure &f, sw_error *e) { return sw_quantity_find(symbol, &f.name.quantity, e); });
}

// The conventions that reproduce figures, those that may be chance behind them.
inline result<std::vector<sw_explanation>> reconcile(const sw_case &work, const sw_rules &rules,
                                                     const std::vector<sw_figure> &figures, sw_error *error = nullptr)
{
    sw_reconciled all = detail::made(sw_reconciled_init);
    return detail::array<sw_explanation>(
        error, [&](sw_explanation *x, std::size_t n, std::size_t *count, sw_error *e) {
            return sw_case_reconcile(&work, &rules, figures.data(), figures.size(), &all, x, n, count, e);
        });
}

// All rows of a sweep; a row that cannot be computed has its status and no number.
struct swept {
    std::vector<double> efficiency;
    std::vector<double> book_efficiency;
    std::vector<double> credited_efficiency;
    std::vector<std::uint16_t> mode;
    std::vector<std::uint8_t> status;
};

inline result<swept> sweep(const sw_sweep &of, const sw_rules &rules, sw_error *error = nullptr)
{
    const std::vector<double> column(of.rows);
    swept start{column, column, column, std::vector<std::uint16_t>(of.rows), std::vector<std::uint8_t>(of.rows)};
    return detail::call(std::move(start), error, [&](swept &s, sw_error *e) {
        sw_sweep_results to = detail::made(sw_sweep_results_init);
        to.efficiency = s.efficiency.data(), to.book_efficiency = s.book_efficiency.data();
        to.credited_efficiency = s.credited_efficiency.data(), to.mode = s.mode.data(), to.status = s.status.data();
        return sw_sweep_run(&of, &rules, 0, of.rows, &to, e);
    });
}

// The sheet that someone signs. What the struct points to must outlive the call.
inline result<std::string> sheet(const sw_sheet &of, const sw_rules &rules, const sw_style &style,
                                 sw_error *error = nullptr)
{
    return detail::text(error, [&](char *b, std::size_t n, std::size_t *s, sw_error *e) {
        return sw_sheet_text(&of, &rules, &style, b, n, s, e);
    });
}

// The hash of its inputs, and the text that is hashed.
inline result<std::uint64_t> sheet_hash(const sw_sheet &of, const sw_rules &rules, sw_error *error = nullptr)
{
    return detail::call(std::uint64_t{0}, error,
                        [&](std::uint64_t &h, sw_error *e) { return sw_sheet_hash(&of, &rules, &h, e); });
}
inline result<std::string> sheet_inputs(const sw_sheet &of, const sw_rules &rules, sw_error *error = nullptr)
{
    return detail::text(error, [&](char *b, std::size_t n, std::size_t *s, sw_error *e) {
        return sw_sheet_inputs(&of, &rules, b, n, s, e);
    });
}

// What each input of a joint does to it.
inline result<std::vector<sw_slope>> slopes(const sw_joint &joint, const sw_materials &materials, const sw_rules &rules,
                                            sw_error *error = nullptr)
{
    return detail::array<sw_slope>(error, [&](sw_slope *l, std::size_t n, std::size_t *count, sw_error *e) {
        return sw_joint_slopes(&joint, &materials, &rules, l, n, count, e);
    });
}

// The worst case over tolerances.
inline result<sw_worst> worst(const sw_joint &joint, const sw_materials &materials, const sw_rules &rules,
                              const sw_tolerances &by, std::uint32_t target = SW_TARGET_EFFICIENCY,
                              sw_error *error = nullptr)
{
    return detail::call(detail::made(sw_worst_init), error, [&](sw_worst &w, sw_error *e) {
        return sw_joint_worst(&joint, &materials, &rules, &by, target, &w, e);
    });
}

// Columns side by side, in order.
inline result<std::vector<sw_compared>> compare(const std::vector<sw_column> &columns,
                                                std::uint32_t sort = SW_SORT_GIVEN, sw_error *error = nullptr)
{
    return detail::array<sw_compared>(error, [&](sw_compared *f, std::size_t n, std::size_t *count, sw_error *e) {
        return sw_columns_compare(columns.data(), columns.size(), sort, f, n, count, e);
    });
}

// What an exercise asks for, with the answers.
inline result<std::vector<sw_asked>> key(const sw_exercise &exercise, const sw_rules &rules, sw_error *error = nullptr)
{
    return detail::array<sw_asked>(error, [&](sw_asked *a, std::size_t n, std::size_t *count, sw_error *e) {
        return sw_exercise_key(&exercise, &rules, a, n, count, e);
    });
}

} // namespace sw

#endif
