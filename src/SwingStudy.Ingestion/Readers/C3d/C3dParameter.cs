using System.Text;
using System.Text.Unicode;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>One parameter of a C3D file.</summary>
/// <param name="Group">Name of its group; <c>#</c> and the number of a group that has none.</param>
/// <param name="Name">Its name.</param>
/// <param name="Type">What it holds.</param>
/// <param name="Dimensions">Lengths, the first varies fastest; none for a scalar.</param>
/// <param name="Data">Its bytes as they stand in the file.</param>
/// <param name="Order">Their order.</param>
public sealed record C3dParameter(string Group, string Name, C3dParameterType Type, IReadOnlyList<int> Dimensions, ReadOnlyMemory<byte> Data, C3dByteOrder Order)
{
    /// <summary>Texts, blanks at their ends taken off; none when it holds no text.</summary>
    public IReadOnlyList<string> Texts()
    {
        if (Type != C3dParameterType.Text || Data.Length == 0)
            return [];
        var width = Dimensions.Count == 0 ? 1 : Dimensions[0];
        var texts = new string[Data.Length / width];
        for (var i = 0; i < texts.Length; i++)
            texts[i] = Decode(Data.Span.Slice(i * width, width));
        return texts;
    }

    /// <summary>Numbers, integers signed; none when it holds text.</summary>
    public double[] Numbers() => Read(isUnsigned: false);

    /// <summary>Numbers, integers unsigned, for counts and block numbers.</summary>
    public double[] Counts() => Read(isUnsigned: true);

    private static string Decode(ReadOnlySpan<byte> bytes)
    {
        var encoding = Utf8.IsValid(bytes) ? Encoding.UTF8 : Encoding.Latin1;
        return encoding.GetString(bytes).TrimEnd(' ', '\0');
    }

    private double[] Read(bool isUnsigned)
    {
        if (Type == C3dParameterType.Text)
            return [];
        var size = (int)Type;
        var values = new double[Data.Length / size];
        for (var i = 0; i < values.Length; i++)
        {
            var bytes = Data.Span.Slice(i * size, size);
            values[i] = Type switch
            {
                C3dParameterType.Byte => isUnsigned ? bytes[0] : (sbyte)bytes[0],
                C3dParameterType.Integer => isUnsigned ? C3dWords.UInt16(bytes, Order) : (short)C3dWords.UInt16(bytes, Order),
                _ => C3dWords.Real(bytes, Order),
            };
        }

        return values;
    }
}
