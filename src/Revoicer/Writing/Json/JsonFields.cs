using System.Globalization;
using System.Text.Json;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>
/// The members of one object, each taken once by name. What is missing or of another kind becomes a problem and a
/// harmless value, so that reading goes on and all problems are found.
/// </summary>
internal sealed class JsonFields
{
    private readonly JsonElement _object;
    private readonly JsonProblems _problems;
    private readonly Dictionary<string, JsonProperty> _members = [];

    private JsonFields(JsonElement value, JsonProblems problems)
    {
        (_object, _problems) = (value, problems);
        foreach (var member in value.EnumerateObject())
        {
            var name = Unescaped(() => member.Name);
            if (!_members.TryAdd(name, member))
            {
                problems.AddName(member, $"'{Short(name)}' is given twice", "each member once");
            }
        }
    }

    /// <summary>What is made of the members of an object; the default, which is null for a class, where the value is none.</summary>
    public static T Of<T>(JsonElement value, JsonProblems problems, Func<JsonFields, T> read)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            problems.Add(value, KindHere(value), "an object: { ... }");
            return default!;
        }

        var fields = new JsonFields(value, problems);
        var made = read(fields);
        fields.Done();
        return made;
    }

    /// <summary>A text as a message may show it.</summary>
    public static string Short(string text) => text.Length <= 60 ? text : text[..60] + "...";

    /// <summary>A value is wrong.</summary>
    public void Refuse(JsonElement value, string found, string expected) => _problems.Add(value, found, expected);

    /// <summary>A value is of the wrong kind.</summary>
    public void RefuseKind(JsonElement value, string expected) => Refuse(value, KindHere(value), expected);

    /// <summary>A text is none of those that are expected; a value of another kind has been reported already.</summary>
    public void RefuseText(JsonElement value, string expected)
    {
        if (value.ValueKind == JsonValueKind.String)
        {
            Refuse(value, $"'{Short(Text(value))}' stands here", expected);
        }
    }

    public JsonElement? Take(string name)
    {
        if (_members.Remove(name, out var member))
        {
            return member.Value;
        }

        _problems.Add(_object, $"'{name}' is missing from this object", $"a member \"{name}\"");
        return null;
    }

    /// <summary>A member's value, which stays to be taken; null where there is none.</summary>
    public JsonElement? Peek(string name) => _members.TryGetValue(name, out var member) ? member.Value : null;

    public JsonElement? TakeUnlessNull(string name) => Take(name) is { ValueKind: not JsonValueKind.Null } value ? value : null;

    public string Text(string name) => Take(name) is { } value ? Text(value) : "";

    public string? TextOrNull(string name) => TakeUnlessNull(name) is { } value ? Text(value) : null;

    public bool Truth(string name)
    {
        var value = Take(name);
        if (value is { ValueKind: JsonValueKind.True or JsonValueKind.False } truth)
        {
            return truth.GetBoolean();
        }

        Wrong(value, "true or false");
        return false;
    }

    public long Whole(string name, long from, long to) => Take(name) is { } value ? Whole(value, from, to) : from;

    public long? WholeOrNull(string name, long from, long to) =>
        TakeUnlessNull(name) is { } value ? Whole(value, from, to) : null;

    public long Whole(JsonElement value, long from, long to)
    {
        if (value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out var whole) && whole >= from && whole <= to)
        {
            return whole;
        }

        Wrong(value, from == to ? $"{from}" : $"a whole number from {from} to {to}");
        return from;
    }

    public double Number(string name, double from, double to)
    {
        var value = Take(name);
        if (value is { ValueKind: JsonValueKind.Number } number && number.GetDouble() is var found && found >= from && found <= to)
        {
            return found;
        }

        Wrong(value, string.Create(CultureInfo.InvariantCulture, $"a number from {from} to {to}"));
        return from;
    }

    public Items<T> List<T>(string name, Func<JsonElement, T> element)
    {
        var value = Take(name);
        if (value is { ValueKind: JsonValueKind.Array } list)
        {
            return list.EnumerateArray().Select(element).ToItems();
        }

        Wrong(value, "a list: [ ... ]");
        return [];
    }

    public T Object<T>(JsonElement value, Func<JsonFields, T> read) => Of(value, _problems, read);

    public T Object<T>(string name, Func<JsonFields, T> read) => Take(name) is { } value ? Object(value, read) : default!;

    public T? ObjectOrNull<T>(string name, Func<JsonFields, T> read)
        where T : class => TakeUnlessNull(name) is { } value ? Object(value, read) : null;

    public Items<T> Objects<T>(string name, Func<JsonFields, T> read) => List(name, v => Object(v, read));

    /// <summary>At least one object.</summary>
    public Items<T> SomeObjects<T>(string name, Func<JsonFields, T> read)
    {
        var value = Take(name);
        if (value is { ValueKind: JsonValueKind.Array } list && list.GetArrayLength() > 0)
        {
            return list.EnumerateArray().Select(v => Object(v, read)).ToItems();
        }

        if (value is { } other)
        {
            Refuse(other, other.ValueKind == JsonValueKind.Array ? "an empty list stands here" : KindHere(other), "a list of at least one object");
        }

        return [];
    }

    public string Text(JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.String)
        {
            return Unescaped(value.GetString);
        }

        Wrong(value, "a text");
        return "";
    }

    // A number is shown, as it may be out of range.
    private void Wrong(JsonElement? value, string expected)
    {
        if (value is { ValueKind: JsonValueKind.Number } number)
        {
            Refuse(number, string.Create(CultureInfo.InvariantCulture, $"{number.GetDouble()} stands here"), expected);
        }
        else if (value is { } other)
        {
            RefuseKind(other, expected);
        }
    }

    // What has not been taken is unknown.
    private void Done()
    {
        foreach (var (name, member) in _members)
        {
            _problems.AddName(member, $"'{Short(name)}' is no member of this object", "the members of docs/files.md");
        }
    }

    // An escape for half a character is a problem that the check of the file has added.
    private static string Unescaped(Func<string?> text)
    {
        try
        {
            return text()!;
        }
        catch (InvalidOperationException)
        {
            return "";
        }
    }

    private static string KindHere(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => "a text",
        JsonValueKind.Number => "a number",
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        _ => "null",
    } + " stands here";
}
