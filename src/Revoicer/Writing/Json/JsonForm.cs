using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>
/// The form of the JSON files: indented, with small objects on one line each, so that lists read as tables. The framework's
/// writer indents all or nothing, so each such line is made by a second writer and handed over as it stands.
/// </summary>
internal static class JsonForm
{
    private static readonly JsonWriterOptions OnOneLine = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonWriterOptions Indented = OnOneLine with { Indented = true, NewLine = "\n" };

    /// <summary>A file of one object: UTF-8 without byte order mark, indented, lines ending in \n.</summary>
    /// <param name="value">What is written.</param>
    /// <param name="members">Writes its members.</param>
    public static byte[] File<T>(T value, Action<Utf8JsonWriter, T> members)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Indented))
        {
            WriteMembers(json, value, members);
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
    }

    /// <summary>An object, or null.</summary>
    public static void WriteObject<T>(this Utf8JsonWriter json, string name, T? value, Action<Utf8JsonWriter, T> members)
        where T : class => json.WriteUnlessNull(name, value, given => WriteMembers(json, given, members));

    /// <summary>An object on one line, or null.</summary>
    public static void WriteLine<T>(this Utf8JsonWriter json, string name, T? value, Action<Utf8JsonWriter, T> members)
        where T : class => json.WriteUnlessNull(name, value, given => json.WriteRaw("", line => WriteMembers(line, given, members)));

    /// <summary>A list of objects.</summary>
    public static void WriteObjects<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> members) =>
        json.WriteList(name, items, item => WriteMembers(json, item, members));

    /// <summary>A list with one object a line.</summary>
    public static void WriteLines<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> members)
    {
        var indent = "\n" + new string(' ', 2 * (json.CurrentDepth + 1));
        json.WriteList(name, items, item => json.WriteRaw(indent, line => WriteMembers(line, item, members)));
    }

    /// <summary>A list of texts.</summary>
    public static void WriteTexts(this Utf8JsonWriter json, string name, IEnumerable<string> texts) => json.WriteList(name, texts, json.WriteStringValue);

    /// <summary>Whole numbers as a list on one line.</summary>
    public static void WriteNumbers(this Utf8JsonWriter json, string name, IEnumerable<int> numbers)
    {
        json.WritePropertyName(name);
        json.WriteRawValue($"[{string.Join(',', numbers)}]");
    }

    /// <summary>A whole number, or null.</summary>
    public static void WriteNumber(this Utf8JsonWriter json, string name, long? number) => json.WriteUnlessNull(name, number, json.WriteNumberValue);

    /// <summary>A number, or null.</summary>
    public static void WriteNumber(this Utf8JsonWriter json, string name, double? number) => json.WriteUnlessNull(name, number, json.WriteNumberValue);

    /// <summary>Notes as a list on one line.</summary>
    public static void WriteNotes(this Utf8JsonWriter json, string name, Items<WrittenNote> notes)
    {
        json.WritePropertyName(name);
        json.WriteRaw("", line =>
        {
            line.WriteStartArray();
            foreach (var note in notes)
            {
                WriteMembers(line, note, WriteNoteMembers);
            }

            line.WriteEndArray();
        });
    }

    /// <summary>A note as an object on one line, or null.</summary>
    public static void WriteNote(this Utf8JsonWriter json, string name, WrittenNote? note) =>
        json.WriteUnlessNull(name, note, given => json.WriteRaw("", line => WriteMembers(line, given, WriteNoteMembers)));

    /// <summary>Number and name of a note, as members of the object at hand.</summary>
    public static void WriteNoteMembers(this Utf8JsonWriter json, WrittenNote note)
    {
        json.WriteNumber("midi", note.Midi);
        json.WriteString("name", note.ToString());
    }

    private static void WriteMembers<T>(Utf8JsonWriter json, T value, Action<Utf8JsonWriter, T> members)
    {
        json.WriteStartObject();
        members(json, value);
        json.WriteEndObject();
    }

    private static void WriteList<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            write(item);
        }

        json.WriteEndArray();
    }

    private static void WriteUnlessNull<T>(this Utf8JsonWriter json, string name, T? value, Action<T> write)
        where T : class
    {
        json.WritePropertyName(name);
        if (value is null)
        {
            json.WriteNullValue();
        }
        else
        {
            write(value);
        }
    }

    private static void WriteUnlessNull<T>(this Utf8JsonWriter json, string name, T? value, Action<T> write)
        where T : struct
    {
        json.WritePropertyName(name);
        if (value is { } given)
        {
            write(given);
        }
        else
        {
            json.WriteNullValue();
        }
    }

    private static void WriteRaw(this Utf8JsonWriter json, string indent, Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>(256);
        buffer.Write(Encoding.ASCII.GetBytes(indent));
        using (var line = new Utf8JsonWriter(buffer, OnOneLine))
        {
            write(line);
        }

        json.WriteRawValue(buffer.WrittenSpan, skipInputValidation: true);
    }
}
