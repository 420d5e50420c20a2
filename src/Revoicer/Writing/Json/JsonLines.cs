using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>
/// Small objects on one line each inside of an indented text, so that lists read as tables. The framework's writer indents
/// all or nothing, so each line is made by a second writer and handed over as it stands.
/// </summary>
internal static class JsonLines
{
    private static readonly JsonWriterOptions OnOneLine = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A list with one object a line.</summary>
    public static void WriteLines<T>(this Utf8JsonWriter json, string name, Items<T> items, Action<Utf8JsonWriter, T> members)
    {
        json.WriteStartArray(name);
        var indent = "\n" + new string(' ', 2 * json.CurrentDepth);
        foreach (var item in items)
        {
            json.WriteRaw(indent, line => WriteObject(line, l => members(l, item)));
        }

        json.WriteEndArray();
    }

    /// <summary>An object on the line at hand.</summary>
    public static void WriteOnOneLine(this Utf8JsonWriter json, Action<Utf8JsonWriter> members) =>
        json.WriteRaw("", line => WriteObject(line, members));

    /// <summary>Notes as a list on one line.</summary>
    public static void WriteNotes(this Utf8JsonWriter json, string name, Items<WrittenNote> notes)
    {
        json.WritePropertyName(name);
        json.WriteRaw("", line =>
        {
            line.WriteStartArray();
            foreach (var note in notes)
            {
                WriteObject(line, l => l.WriteNoteMembers(note));
            }

            line.WriteEndArray();
        });
    }

    /// <summary>Whole numbers as a list on one line.</summary>
    public static void WriteNumbers(this Utf8JsonWriter json, string name, Items<int> numbers)
    {
        json.WritePropertyName(name);
        json.WriteRawValue($"[{string.Join(',', numbers)}]");
    }

    /// <summary>A note as an object on one line, or null.</summary>
    public static void WriteNote(this Utf8JsonWriter json, string name, WrittenNote? note)
    {
        json.WritePropertyName(name);
        if (note is { } bell)
        {
            json.WriteOnOneLine(line => line.WriteNoteMembers(bell));
        }
        else
        {
            json.WriteNullValue();
        }
    }

    /// <summary>Number and name of a note, as members of the object at hand.</summary>
    public static void WriteNoteMembers(this Utf8JsonWriter json, WrittenNote note)
    {
        json.WriteNumber("midi", note.Midi);
        json.WriteString("name", note.ToString());
    }

    private static void WriteObject(Utf8JsonWriter line, Action<Utf8JsonWriter> members)
    {
        line.WriteStartObject();
        members(line);
        line.WriteEndObject();
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
