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
inline sw_title title() { return detail::made(sw_title_init); }

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
    return detail::call(std::vector<sw_mode>(), error, [&](std::vector<sw_mode> &m, sw_error *e) {
        std::size_t count = 0;
        const std::uint32_t status = sw_modes_list(&joint, &materials, &rules, nullptr, 0, &count, e);
        if (status != SW_OK)
            return status;
        m.resize(count);
        return sw_modes_list(&joint, &materials, &rules, m.data(), m.size(), &count, e);
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

} // namespace sw

#endif
