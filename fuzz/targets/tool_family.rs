#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| reinwright_tests::input::tool_family(bytes));
