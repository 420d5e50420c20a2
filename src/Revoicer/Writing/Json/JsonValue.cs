namespace Revoicer.Writing.Json;

/// <summary>A value of a JSON text that knows where it stands.</summary>
/// <param name="Offset">Its first byte in the file.</param>
/// <param name="Length">How many bytes are meant when it is pointed at.</param>
internal abstract record JsonValue(int Offset, int Length)
{
    /// <summary>What a message calls it.</summary>
    public abstract string Kind { get; }

    /// <summary>An object with its members in the order of the file.</summary>
    public sealed record Object(int Offset, int Length, IReadOnlyList<JsonMember> Members) : JsonValue(Offset, Length)
    {
        public override string Kind => "an object";
    }

    /// <summary>A list.</summary>
    public sealed record List(int Offset, int Length, IReadOnlyList<JsonValue> Elements) : JsonValue(Offset, Length)
    {
        public override string Kind => "a list";
    }

    /// <summary>A text, escapes undone.</summary>
    public sealed record Text(int Offset, int Length, string Value) : JsonValue(Offset, Length)
    {
        public override string Kind => "a text";
    }

    /// <summary>A number; whole where it is written without fraction and fits 64 bits.</summary>
    public sealed record Number(int Offset, int Length, double Value, long? Whole) : JsonValue(Offset, Length)
    {
        public override string Kind => "a number";
    }

    /// <summary>true or false.</summary>
    public sealed record Truth(int Offset, int Length, bool Value) : JsonValue(Offset, Length)
    {
        public override string Kind => Value ? "true" : "false";
    }

    /// <summary>null.</summary>
    public sealed record Nothing(int Offset, int Length) : JsonValue(Offset, Length)
    {
        public override string Kind => "null";
    }
}

/// <summary>A member of an object.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Offset">The first byte of the name in the file.</param>
/// <param name="Length">The length of the name with its quotes, in bytes.</param>
/// <param name="Value">Its value.</param>
internal sealed record JsonMember(string Name, int Offset, int Length, JsonValue Value);
