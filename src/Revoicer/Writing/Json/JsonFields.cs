using System.Globalization;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>
/// The members of one object, each taken once by name. What is missing or of another kind becomes a problem and a
/// harmless value, so that reading goes on and all problems are found.
/// </summary>
internal sealed class JsonFields
{
    private readonly JsonValue.Object _object;
    private readonly JsonProblems _problems;
    private readonly Dictionary<string, JsonMember> _members = [];

    private JsonFields(JsonValue.Object value, JsonProblems problems)
    {
        (_object, _problems) = (value, problems);
        foreach (var member in value.Members)
        {
            if (!_members.TryAdd(member.Name, member))
            {
                problems.Add(member.Offset, member.Length, $"'{Short(member.Name)}' is given twice", "each member once");
            }
        }
    }

    public static JsonFields? Of(JsonValue value, JsonProblems problems)
    {
        if (value is JsonValue.Object found)
        {
            return new JsonFields(found, problems);
        }

        problems.Add(value, $"{value.Kind} stands here", "an object: { ... }");
        return null;
    }

    /// <summary>A text as a message may show it.</summary>
    public static string Short(string text) => text.Length <= 60 ? text : text[..60] + "...";

    public JsonValue? Take(string name)
    {
        if (_members.Remove(name, out var member))
        {
            return member.Value;
        }

        _problems.Add(_object, $"'{name}' is missing from this object", $"a member \"{name}\"");
        return null;
    }

    /// <summary>A member's value, which stays to be taken; null where there is none.</summary>
    public JsonValue? Peek(string name) => _members.GetValueOrDefault(name)?.Value;

    public JsonValue? TakeUnlessNull(string name) => Take(name) is { } value and not JsonValue.Nothing ? value : null;

    public string Text(string name) => Take(name) is { } value ? Text(value) : "";

    public string? TextOrNull(string name) => TakeUnlessNull(name) is { } value ? Text(value) : null;

    public bool Truth(string name)
    {
        var value = Take(name);
        if (value is JsonValue.Truth truth)
        {
            return truth.Value;
        }

        Wrong(value, "true or false");
        return false;
    }

    public long Whole(string name, long from, long to) => Take(name) is { } value ? Whole(value, from, to) : from;

    public long? WholeOrNull(string name, long from, long to) =>
        TakeUnlessNull(name) is { } value ? Whole(value, from, to) : null;

    public long Whole(JsonValue value, long from, long to)
    {
        if (value is JsonValue.Number { Whole: { } whole } && whole >= from && whole <= to)
        {
            return whole;
        }

        var expected = from == to ? $"{from}" : $"a whole number from {from} to {to}";
        Wrong(value, expected);
        return from;
    }

    public double Number(string name, double from, double to)
    {
        var value = Take(name);
        if (value is JsonValue.Number { Value: var number } && number >= from && number <= to)
        {
            return number;
        }

        Wrong(value, string.Create(CultureInfo.InvariantCulture, $"a number from {from} to {to}"));
        return from;
    }

    public Items<T> List<T>(string name, Func<JsonValue, T> element)
    {
        var value = Take(name);
        if (value is JsonValue.List list)
        {
            return list.Elements.Select(element).ToItems();
        }

        Wrong(value, "a list: [ ... ]");
        return [];
    }

    /// <summary>To be called last: what has not been taken is unknown.</summary>
    public void Done()
    {
        foreach (var member in _members.Values)
        {
            _problems.Add(member.Offset, member.Length, $"'{Short(member.Name)}' is no member of this object", "the members of docs/files.md");
        }
    }

    public string Text(JsonValue value)
    {
        if (value is JsonValue.Text text)
        {
            return text.Value;
        }

        Wrong(value, "a text");
        return "";
    }

    private void Wrong(JsonValue? value, string expected)
    {
        if (value is not null)
        {
            var found = value is JsonValue.Number { Value: var number }
                ? string.Create(CultureInfo.InvariantCulture, $"{number} stands here")
                : $"{value.Kind} stands here";
            _problems.Add(value, found, expected);
        }
    }
}
