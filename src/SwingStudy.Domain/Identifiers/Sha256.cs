using System.Security.Cryptography;

namespace SwingStudy.Domain.Identifiers;

/// <summary>SHA-256 of some bytes, as 64 lower-case hexadecimal digits.</summary>
public readonly record struct Sha256
{
    private readonly string? _hex;

    /// <summary>Takes 64 hexadecimal digits.</summary>
    /// <exception cref="ArgumentException">Not 64 lower-case hexadecimal digits.</exception>
    public Sha256(string hex) =>
        _hex = hex is { Length: 64 } && hex.All(char.IsAsciiHexDigitLower)
            ? hex
            : throw new ArgumentException($"'{hex}' is not a SHA-256 of 64 lower-case hexadecimal digits.", nameof(hex));

    /// <summary>The hash of <paramref name="bytes"/>.</summary>
    public static Sha256 Of(ReadOnlySpan<byte> bytes) => new(Convert.ToHexStringLower(SHA256.HashData(bytes)));

    /// <summary>The hash of a text's UTF-8 bytes.</summary>
    public static Sha256 Of(string text) => Of(System.Text.Encoding.UTF8.GetBytes(text));

    /// <summary>The first 12 digits: short enough to read, long enough to tell the files of one study apart.</summary>
    public string Short => ToString()[..12];

    /// <summary>The 64 digits.</summary>
    public override string ToString() => _hex ?? throw new InvalidOperationException("This hash was never computed.");
}
